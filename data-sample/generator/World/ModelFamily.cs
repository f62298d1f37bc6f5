namespace PartsSignal.SampleShop.World;

/// <summary>A model number and the months it was made in, both ends inside.</summary>
internal sealed record Model(string Number, int FirstMonth, int LastMonth);

/// <summary>One cause as one family has it.</summary>
/// <param name="Cause">What it is.</param>
/// <param name="ScaleYears">This family's Weibull scale, in years of household use.</param>
/// <param name="Part">The part it takes; null: none.</param>
/// <param name="Extras">Parts often fitted with it, and how often.</param>
internal sealed record FamilyCause(Cause Cause, double ScaleYears, PartLineage? Part, IReadOnlyList<(PartLineage Part, double Share)> Extras);

/// <summary>Appliances of one design: they share parts and lives.</summary>
internal sealed record ModelFamily(
    int Index,
    string Code,
    Brand Brand,
    string Type,
    string Generation,
    int LaunchMonth,
    int StopMonth,
    double Popularity,
    IReadOnlyList<Model> Models,
    IReadOnlyList<FamilyCause> Causes)
{
    /// <summary>Relative sales in a build month: a slow start, a plateau, a fade.</summary>
    public double SalesIn(int month)
    {
        if (month < LaunchMonth || month > StopMonth)
        {
            return 0;
        }

        double rise = Math.Min(1, (month - LaunchMonth + 1) / 18.0);
        double fade = Math.Min(1, (StopMonth - month + 1) / 12.0);
        return Popularity * Math.Min(rise, fade);
    }
}
