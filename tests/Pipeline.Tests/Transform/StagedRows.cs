using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Tests.Transform;

internal abstract record StagedRow
{
    public int SourceOrder { get; init; }

    public int SourceLine { get; init; }

    /// <summary>Null: made from the row's own cells.</summary>
    public string? RowHash { get; init; }

    public string SourceFile => $"file-{SourceOrder}.csv";

    protected static string? Key(string? raw) => raw is null ? null : CompactKey.From(raw);

}

internal sealed record StagedJob(string JobId) : StagedRow
{
    public DateOnly OpenedOn { get; init; } = new(2024, 3, 4);

    public DateOnly? ClosedOn { get; init; } = new DateOnly(2024, 3, 5);

    public string? Technician { get; init; }

    public string? Van { get; init; }

    public string? SerialKey { get; init; }

    public string? PlaceKey { get; init; }

    public string? CustomerKind { get; init; }

    public string? ApplianceType { get; init; } = "washer";

    public string? Brand { get; init; } = "Orvane";

    public string? ModelRaw { get; init; }

    public string? ModelKey => Key(ModelRaw);

    public DateOnly? MadeOnFrom { get; init; }

    public DateOnly? MadeOnTo { get; init; }

    public string? SerialCandidates { get; init; }

    public string? SerialFault { get; init; }

    public DateOnly? PurchasedOn { get; init; }

    public double? AgeStatedYears { get; init; }

    public double? AgeStatedMonths { get; init; }

    public double? AgeStatedDays { get; init; }

    public string? ComplaintText { get; init; }

    public string ComplaintKind { get; init; } = "no_fill";

    public string? ErrorCode { get; init; }

    public string Outcome { get; init; } = "fixed_with_part";

    public string? Status { get; init; }

    public string? OutcomeText { get; init; }

    public string? FaultText { get; init; }

    public string? FaultComponent { get; init; }

    public int? Visits { get; init; } = 1;

    public double? LabourMinutes { get; init; }

    public DateOnly? UpdatedOn { get; init; }
}

internal sealed record StagedJobPart(string JobId, string? PartRaw) : StagedRow
{
    public string? PartKey => Key(PartRaw);

    public string? Description { get; init; }

    public string? Component { get; init; }

    public int Quantity { get; init; } = 1;

    public bool? FromVan { get; init; }

    public decimal? UnitPrice { get; init; }

    public string? Supplier { get; init; }

    public int GroupNo { get; init; } = 1;

    public DateOnly? UpdatedOn { get; init; }

    public bool WithJobRow { get; init; } = true;
}

internal sealed record StagedOrder(string OrderId, string Supplier, string? PartRaw) : StagedRow
{
    public DateOnly OrderedOn { get; init; } = new(2024, 1, 10);

    public DateOnly? ReceivedOn { get; init; }

    public string? PartKey => Key(PartRaw);

    public string? OtherRaw { get; init; }

    public string? OtherKey => Key(OtherRaw);

    public string? Description { get; init; }

    public string? Component { get; init; }

    public int Quantity { get; init; } = 1;

    public decimal? UnitCost { get; init; }

    public string? JobId { get; init; }

    public int? ReturnedQuantity { get; init; } = 0;

    public string? ReturnReason { get; init; }

    public DateOnly? UpdatedOn { get; init; }
}

internal sealed record StagedPart(string PartRaw) : StagedRow
{
    public string PartKey => Key(PartRaw)!;

    public string? Description { get; init; }

    public string? Component { get; init; }

    public decimal? Price { get; init; }

    public string? SizeClass { get; init; }

    public int? ReturnableDays { get; init; }

    public int? WarrantyDays { get; init; }

    public string? Supplier { get; init; }
}

internal sealed record StagedArrow(string OldRaw, string? NewRaw) : StagedRow
{
    public string OldKey => Key(OldRaw)!;

    public string? NewKey => Key(NewRaw);

    public DateOnly? EffectiveOn { get; init; }

    public string Kind { get; init; } = "replaces";

    public int Quantity { get; init; } = 1;
}

internal sealed record StagedAlias(string Supplier, string AliasRaw, string PartRaw) : StagedRow
{
    public string AliasKey => Key(AliasRaw)!;

    public string PartKey => Key(PartRaw)!;
}

internal sealed record StagedModel(string ModelRaw, string? ModelFamily) : StagedRow
{
    public string ModelKey => Key(ModelRaw)!;

    public string? ModelPattern => ModelWildcard.Pattern(ModelRaw);

    public string? ApplianceType { get; init; } = "washer";

    public string? Brand { get; init; } = "Orvane";

    public DateOnly? FirstMade { get; init; }

    public DateOnly? LastMade { get; init; }
}

internal sealed record StagedUnit(string? SerialKey) : StagedRow
{
    public string? PlaceKey { get; init; }

    public string? SerialCandidates { get; init; }

    public string? ApplianceType { get; init; } = "washer";

    public string? Brand { get; init; } = "Orvane";

    public string? ModelRaw { get; init; }

    public string? ModelKey => Key(ModelRaw);

    public DateOnly? MadeOnFrom { get; init; }

    public DateOnly? MadeOnTo { get; init; }

    public DateOnly? InstalledOn { get; init; }

    public DateOnly? RemovedOn { get; init; }

    public DateOnly? PurchasedOn { get; init; }

    public double? AgeYears { get; init; }

    public double? AgeMonths { get; init; }

    public DateOnly? ListedOn { get; init; }
}

internal sealed record StagedFitment(string PartRaw) : StagedRow
{
    public string? ModelRaw { get; init; }

    public string? ModelKey => Key(ModelRaw);

    public string? ModelPattern { get; init; }

    public string? ModelFamily { get; init; }

    public string PartKey => Key(PartRaw)!;

    public int Quantity { get; init; } = 1;
}

internal sealed record StagedCount(string Van, string PartRaw, int OnHand) : StagedRow
{
    public string PartKey => Key(PartRaw)!;

    public DateOnly? CountedOn { get; init; }
}
