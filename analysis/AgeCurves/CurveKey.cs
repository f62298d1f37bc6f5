namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Which curve: a component in one family, or in all families of an appliance type.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">For example drain_pump.</param>
/// <param name="ModelFamily">A family, or <see cref="AllFamilies"/>.</param>
internal sealed record CurveKey(string ApplianceType, string Component, string ModelFamily)
{
    /// <summary>Stands for every family of the type.</summary>
    public const string AllFamilies = "all";
}

/// <summary>What a curve or a chance rests on.</summary>
public static class CurveBasis
{
    /// <summary>Appliances a register lists, watched whether they fail or not.</summary>
    public const string Register = "register";

    /// <summary>Failures in the job log alone, corrected for what the log cannot see: given that it fails by some age.</summary>
    public const string LogOnly = "log_only";

    /// <summary>Appliances seen before, watched from the day after their first call: a return to this shop, not every failure.</summary>
    public const string UnitsSeen = "units_seen";
}
