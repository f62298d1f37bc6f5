namespace PartsSignal.Analysis.Rates;

/// <summary>How often one component is needed, or one complaint made, in one group of appliances.</summary>
public sealed record FailureRate
{
    /// <summary>What the events are divided by: share_of_calls, register_unit_years, seen_unit_years or part_years.</summary>
    public required string Basis { get; init; }

    /// <summary>Which of the dimensions below are set: type, brand, family, age, family_age, complaint, family_complaint, supplier, any_supplier, or a property of the call.</summary>
    public required string Grouping { get; init; }

    /// <summary>Appliance type; all for parts in service, which may fit several.</summary>
    public required string ApplianceType { get; init; }

    /// <summary>Brand, or null for all.</summary>
    public string? Brand { get; init; }

    /// <summary>Model family, or null for all.</summary>
    public string? ModelFamily { get; init; }

    /// <summary>Age at the call, in years, or null for all.</summary>
    public string? AgeBand { get; init; }

    /// <summary>Only calls with this complaint kind, or null for all.</summary>
    public string? GivenComplaint { get; init; }

    /// <summary>Value of the property that <see cref="Grouping"/> names, for cuts by a property of the call, or null for all.</summary>
    public string? GroupValue { get; init; }

    /// <summary>Only parts of this supplier, or null for all.</summary>
    public string? Supplier { get; init; }

    /// <summary>component or complaint_kind.</summary>
    public required string SubjectKind { get; init; }

    /// <summary>The component or complaint kind; component none: no part was needed.</summary>
    public required string Subject { get; init; }

    /// <summary>Calls with it; over unit-years cases with it (a repair and the calls that came back to it count once).</summary>
    public required long Events { get; init; }

    /// <summary>What they are divided by, in the unit of <see cref="ExposureUnit"/>.</summary>
    public required double Exposure { get; init; }

    /// <summary>calls, unit-years or part-years.</summary>
    public required string ExposureUnit { get; init; }

    /// <summary>Calls of the group whose need is not known (still open, declined, not recorded); they count for no component.</summary>
    public required long NotKnown { get; init; }

    /// <summary>share (0 to 1), per 100 unit-years or per 100 part-years.</summary>
    public required string Unit { get; init; }

    /// <summary>Raw figure, or null if missing (see <see cref="Missing"/>). Over unit-years the expected untold cases count.</summary>
    public double? Estimate { get; init; }

    /// <summary>Lower end: Wilson for shares, Garwood for rates; over unit-years that of no untold case.</summary>
    public double? Lower { get; init; }

    /// <summary>Upper end; over unit-years that of all untold cases (<see cref="UntoldSpread"/>).</summary>
    public double? Upper { get; init; }

    /// <summary>Why there is no raw figure; null when there is one.</summary>
    public string? Missing { get; init; }

    /// <summary>The figure pulled towards what similar groups show; null where there are no similar groups.</summary>
    public double? Shrunk { get; init; }

    /// <summary>Lower end of the shrunk figure's interval.</summary>
    public double? ShrunkLower { get; init; }

    /// <summary>Upper end of the shrunk figure's interval.</summary>
    public double? ShrunkUpper { get; init; }

    /// <summary>families, brands or suppliers: what it was pulled towards.</summary>
    public string? ShrunkOver { get; init; }

    /// <summary>Over unit-years: cases that may belong to the group although the job does not tell the machine; they are not among <see cref="Events"/>.</summary>
    public long? Untold { get; init; }

    /// <summary>Over unit-years: how many of <see cref="Untold"/> are expected to belong to it.</summary>
    public double? UntoldExpected { get; init; }
}
