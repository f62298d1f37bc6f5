namespace PartsSignal.SampleShop.World;

/// <summary>One way an appliance of a type stops working: a component that dies, or something that needs no part.</summary>
/// <param name="Name">Component, or the no-part cause (closed_tap ...).</param>
/// <param name="Component">Component, or 'none'.</param>
/// <param name="Generation">mech, elec, or any.</param>
/// <param name="Shape">Weibull shape; 1 for causes without a part.</param>
/// <param name="ScaleYears">Median over families of the Weibull scale, in years of household use.</param>
/// <param name="FamilySpread">Standard deviation of the log scale between families.</param>
/// <param name="Season">How fast life goes by on each day.</param>
/// <param name="CodeGroup">Group of error codes the electronic generation shows for it; 0: none of its own.</param>
/// <param name="Odds">Complaint kind it shows as, and how often; sums to 1.</param>
/// <param name="Extras">Components often fitted with it, and how often.</param>
internal sealed record Cause(
    string Name,
    string Component,
    string Generation,
    double Shape,
    double ScaleYears,
    double FamilySpread,
    Season Season,
    int CodeGroup,
    IReadOnlyList<(string Name, double Share)> Odds,
    IReadOnlyList<(string Name, double Share)> Extras)
{
    public const string NoPart = "none";

    public bool NeedsPart => Component != NoPart;

    public static IReadOnlyDictionary<string, IReadOnlyList<Cause>> ReadByType()
    {
        DataTable table = DataTable.Read("causes");
        return table.Rows.GroupBy(r => table.Text(r, "type")).ToDictionary(
            g => g.Key,
            g => (IReadOnlyList<Cause>)[.. g.Select(r => new Cause(
                table.Text(r, "cause"),
                table.Text(r, "component"),
                table.Text(r, "generation"),
                table.Number(r, "shape"),
                table.Number(r, "scale_years"),
                table.Number(r, "family_spread"),
                Season.Named(table.Text(r, "season")),
                table.Whole(r, "code_group"),
                table.Shares(r, "odds"),
                table.Shares(r, "extras")))]);
    }
}

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
