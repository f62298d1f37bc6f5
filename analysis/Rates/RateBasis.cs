namespace PartsSignal.Analysis.Rates;

/// <summary>What events are divided by. A figure without its basis means nothing, so every table names it.</summary>
public static class RateBasis
{
    /// <summary>Calls of the group whose need is known (for a component), or all its calls (for a complaint kind).</summary>
    public const string ShareOfCalls = "share_of_calls";

    /// <summary>Days that units of a register were watched, whether they failed or not.</summary>
    public const string RegisterUnitYears = "register_unit_years";

    /// <summary>Days since the first call of units that no register lists; the first call itself does not count.</summary>
    public const string SeenUnitYears = "seen_unit_years";

    /// <summary>Days that fitted parts were in service on known units; an event is the same component replaced again.</summary>
    public const string PartYears = "part_years";

    /// <summary>Days of a year of exposure.</summary>
    public const double DaysPerYear = 365.25;

    /// <summary>The basis in words.</summary>
    public static string Words(string basis) => basis switch
    {
        ShareOfCalls => "share of calls",
        RegisterUnitYears => "per 100 unit-years (register)",
        SeenUnitYears => "per 100 unit-years (units seen, from first visit)",
        PartYears => "fitted parts replaced again, per 100 part-years in service",
        _ => basis,
    };
}
