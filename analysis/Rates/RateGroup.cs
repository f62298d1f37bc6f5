using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Rates;

/// <summary>Which calls or units a figure speaks for. Null: all of them.</summary>
/// <param name="Basis">One of <see cref="RateBasis"/>.</param>
/// <param name="Grouping">type, brand, family, age, family_age, complaint, family_complaint, month, family_month, or one of <see cref="RateCut.Properties"/>.</param>
/// <param name="Month">First day of the month of the call, or null for all time.</param>
/// <param name="ApplianceType">Type, or <c>unknown</c>.</param>
/// <param name="Brand">Brand, or <c>unknown</c>.</param>
/// <param name="ModelFamily">Family, or <c>unknown</c>.</param>
/// <param name="AgeBand">Age band at the call, or <c>unknown</c>.</param>
/// <param name="GivenComplaint">Only calls with this complaint kind.</param>
/// <param name="GroupValue">Value of the property that <paramref name="Grouping"/> names, for cuts by a property of the call.</param>
public sealed record RateGroup(
    string Basis, [Column("grouping_kind")] string Grouping, DateOnly? Month, string ApplianceType, string? Brand, string? ModelFamily, string? AgeBand, string? GivenComplaint,
    string? GroupValue = null)
{
    /// <summary>Value of a dimension the log does not tell.</summary>
    public const string Unknown = "unknown";

    /// <summary>The same group with its family, or else its brand, left open: groups that share it are shrunk together.</summary>
    public RateGroup Siblings => ModelFamily is not null ? this with { ModelFamily = null } : this with { Brand = null };

    /// <summary>True when the group is one of several families or brands and it is known which.</summary>
    public bool HasSiblings => (ModelFamily ?? Brand) is { } member && member != Unknown;
}

/// <summary>Size of a group.</summary>
/// <param name="Group">Which.</param>
/// <param name="Calls">Its calls; over unit-years its cases: a repair with the calls that came back to it counts once.</param>
/// <param name="KnownCalls">Calls whose need is known.</param>
/// <param name="UnitDays">Days its units were watched; 0 for shares of calls.</param>
public sealed record GroupSize(RateGroup Group, long Calls, long KnownCalls, long UnitDays);

/// <summary>Calls of a group that needed a component or made a complaint.</summary>
/// <param name="Group">Which.</param>
/// <param name="Subject">What is counted.</param>
/// <param name="Events">How many, 1 or more.</param>
public sealed record SubjectCount(RateGroup Group, RateSubject Subject, long Events);

/// <summary>Cases that may belong to a group of the register although their jobs do not tell the machine.</summary>
/// <param name="Group">Which; a dimension that the jobs do not tell is <see cref="RateGroup.Unknown"/>.</param>
/// <param name="Subject">What is counted.</param>
/// <param name="Possible">How many, 1 or more.</param>
/// <param name="Expected">How many of them are expected to be on the register.</param>
public sealed record UntoldCount(RateGroup Group, RateSubject Subject, long Possible, double Expected);

/// <summary>Cases of one type and subject on units that no register lists, and those whose unit is not told.</summary>
/// <param name="ApplianceType">Type, or <c>unknown</c>.</param>
/// <param name="Subject">What is counted.</param>
/// <param name="Told">Cases that tell a unit that no register lists, the first of each unit among them.</param>
/// <param name="Untold">Cases that tell no unit.</param>
/// <param name="Expected">How many of these are expected to be on a unit that no register lists.</param>
public sealed record SeenUntold(string ApplianceType, RateSubject Subject, long Told, long Untold, double Expected);

/// <summary>What is counted.</summary>
/// <param name="Kind"><c>component</c> or <c>complaint_kind</c>.</param>
/// <param name="Name">Its name; component <c>none</c>: no part was needed.</param>
public sealed record RateSubject([Column("subject_kind")] string Kind, [Column("subject")] string Name)
{
    /// <summary>Kind of a component.</summary>
    public const string Component = "component";

    /// <summary>Kind of a complaint.</summary>
    public const string Complaint = "complaint_kind";
}

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
