namespace PartsSignal.Analysis.CheckOrder;

/// <summary>One check of the shop's table.</summary>
public sealed record ComponentCheck
{
    /// <summary>Component of the row that stands for every component of the shop's own.</summary>
    public const string AnyComponent = "*";

    /// <summary>Appliance types it is for; empty: all.</summary>
    public IReadOnlyList<string> ApplianceTypes { get; init; } = [];

    /// <summary>Complaint kinds it is for; empty: all.</summary>
    public IReadOnlyList<string> Complaints { get; init; } = [];

    /// <summary>Component it clears, or <c>none</c> for a fault that needs no part.</summary>
    public required string Component { get; init; }

    /// <summary>What to check, in a sentence.</summary>
    public required string What { get; init; }

    /// <summary>Minutes once it can be reached, 0 or more.</summary>
    public required double Minutes { get; init; }

    /// <summary>Tool it takes.</summary>
    public string Tool { get; init; } = "";

    /// <summary>What a good reading looks like.</summary>
    public string Good { get; init; } = "";

    /// <summary>What a bad reading looks like.</summary>
    public string Bad { get; init; } = "";

    /// <summary>Opening work it stands behind, or null if there is none.</summary>
    public string? Opening { get; init; }

    /// <summary>Chance that it sees the fault when it is there, above 0 up to 1.</summary>
    public double Finds { get; init; } = 1;

    /// <summary>Its share of the component's faults beside other checks of the same component, above 0.</summary>
    public double Share { get; init; } = 1;

    /// <summary>Free or safety check: always first, never left out.</summary>
    public bool First { get; init; }

    /// <summary>Caution; empty: none beyond the usual.</summary>
    public string Caution { get; init; } = "";

    /// <summary>True for what makes the appliance safe to open.</summary>
    public bool IsSafety => Component == "safety";

    /// <summary>True when the check is meant for a call.</summary>
    public bool IsFor(string applianceType, string complaintKind) =>
        (ApplianceTypes.Count == 0 || ApplianceTypes.Contains(applianceType)) && (Complaints.Count == 0 || Complaints.Contains(complaintKind));
}

/// <summary>Opening work of an appliance type: what must come off before some checks can be done.</summary>
/// <param name="ApplianceType">The type.</param>
/// <param name="Opening">Its name, for example rear panel.</param>
/// <param name="Minutes">Minutes it takes, 0 or more.</param>
/// <param name="Caution">Caution; empty: none.</param>
public sealed record OpeningWork(string ApplianceType, string Opening, double Minutes, string Caution);

/// <summary>The shop's checks and openings.</summary>
/// <param name="Checks">All checks, in the table's order.</param>
/// <param name="Openings">All openings.</param>
public sealed record CheckTable(IReadOnlyList<ComponentCheck> Checks, IReadOnlyList<OpeningWork> Openings)
{
    /// <summary>A table without a check.</summary>
    public static CheckTable Empty { get; } = new([], []);
}
