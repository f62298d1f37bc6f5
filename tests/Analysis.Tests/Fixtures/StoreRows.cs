namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>A job as the store holds it, with plain defaults for what a test does not care about.</summary>
internal sealed record JobRow(string JobId, DateOnly OpenedOn)
{
    public DateOnly? ClosedOn { get; init; }
    public string ClosingBasis { get => field ?? (ClosedOn is null ? "open" : "closing day"); init; }
    public string? Technician { get; init; }
    public string? Van { get; init; }
    public string? VanBasis { get => field ?? (Van is null ? null : "named"); init; }
    public string? UnitId { get; init; }
    public string? CustomerId { get; init; }
    public string? CustomerKind { get; init; }

    public bool? Warranty { get; init; }
    public string? VisitReason { get; init; }
    public string? ApplianceType { get; init; } = "washer";
    public string? Brand { get; init; } = "Norvik";
    public string? ModelRaw { get; init; }
    public string? ModelNumber { get; init; }
    public string? ModelFamily { get; init; } = "NW100";
    public string ModelBasis { get; init; } = "exact";
    public DateOnly? MadeFrom { get; init; }
    public DateOnly? MadeTo { get; init; }
    public double? AgeYears { get; init; }
    public string AgeBasis { get; init; } = "unknown";
    public string? ComplaintText { get; init; }
    public string ComplaintKind { get; init; } = "no_fill";
    public string? ErrorCode { get; init; }
    public string Outcome { get; init; } = "fixed_with_part";
    public string? MainComponent { get; init; }
    public int? Visits { get; init; }
    public double? LabourMinutes { get; init; }
    public bool? FirstVisitDone { get; init; }
    public string SourceFile { get; init; } = "jobs.csv";
    public int SourceLine { get; init; } = 2;
}

/// <summary>A unit as the store holds it.</summary>
internal sealed record UnitRow(string UnitId)
{
    public string? ModelNumber { get; init; }
    public string? ModelFamily { get; init; } = "NW100";
    public string? ApplianceType { get; init; } = "washer";
    public string? Brand { get; init; } = "Norvik";
    public DateOnly? MadeFrom { get; init; }
    public DateOnly? MadeTo { get; init; }
    public DateOnly? InstalledOn { get; init; }
    public DateOnly? RemovedOn { get; init; }
    public DateOnly? SeenFirst { get; init; }
    public DateOnly? SeenLast { get; init; }
    public bool Registered { get; init; }
}

/// <summary>A part line of a job.</summary>
internal sealed record JobPartRow(string JobId, int Line, string? PartNumber, string? Component)
{
    public string? PartRaw { get; init; }
    public string PartBasis { get; init; } = "exact";
    public string? FittedNumber { get; init; }
    public int Quantity { get; init; } = 1;
    public bool? FromVan { get; init; }
    public string? Supplier { get; init; }
    public decimal? UnitPrice { get; init; }
    public string SourceFile { get; init; } = "jobs.csv";
    public int SourceLine { get; init; } = 2;
}

/// <summary>An order line.</summary>
internal sealed record PartOrderRow(string OrderId, int Line, string Supplier, DateOnly OrderedOn, DateOnly? ReceivedOn)
{
    public string? PartRaw { get; init; }
    public string? PartNumber { get; init; }
    public string PartBasis { get; init; } = "exact";
    public string? Component { get; init; }
    public int Quantity { get; init; } = 1;
    public decimal? UnitCost { get; init; }
    public string? JobId { get; init; }
    public int? ReturnedQuantity { get; init; } = 0;
    public string? ReturnReason { get; init; }
    public string SourceFile { get; init; } = "orders.csv";
    public int SourceLine { get; init; } = 2;
}
