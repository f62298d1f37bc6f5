using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>How a job stands or ended.</summary>
internal enum JobState
{
    /// <summary>Nobody has been there yet.</summary>
    Waiting,
    PartOrdered,
    FixedWithPart,
    FixedWithoutPart,
    NoFaultFound,
    Declined,
    NotWorthRepairing,
}

/// <summary>A part line of a job.</summary>
/// <param name="Part">The part.</param>
/// <param name="Version">Which of its numbers was fitted.</param>
/// <param name="Quantity">Pieces.</param>
/// <param name="FromVan">It was on the van.</param>
/// <param name="SecondSupplier">Who supplied it.</param>
internal sealed record FittedPart(PartLineage Part, int Version, int Quantity, bool FromVan, bool SecondSupplier);

/// <summary>What was said and typed when the call came in.</summary>
/// <param name="ShownKind">How the fault really showed.</param>
/// <param name="ComplaintKind">What was typed of it: the same kind, other (vague), or none.</param>
/// <param name="Text">The complaint as typed.</param>
/// <param name="CodeGroup">Group of the error code given; 0: none.</param>
/// <param name="ErrorCode">The code as typed, or empty.</param>
/// <param name="BrandTyped">Brand as typed, or empty.</param>
/// <param name="ModelTyped">Model number as typed, or empty.</param>
/// <param name="SerialTyped">Serial number, or empty.</param>
/// <param name="PurchasedDay">Purchase day where the caller knew it.</param>
/// <param name="StatedAge">Whole years the caller named.</param>
/// <param name="Planted">What of the text is personal, or empty.</param>
internal sealed record CallNote(
    string ShownKind,
    string ComplaintKind,
    string Text,
    int CodeGroup,
    string ErrorCode,
    string BrandTyped,
    string ModelTyped,
    string SerialTyped,
    int? PurchasedDay,
    int? StatedAge,
    string Planted);

/// <summary>One job from call to close. The log's picture of it on a day is <see cref="StateOn"/>.</summary>
internal sealed class Job
{
    public required string Id { get; init; }

    public required int Number { get; init; }

    public required int OpenedDay { get; init; }

    public required Unit Unit { get; init; }

    /// <summary>Index of the true cause among the family's.</summary>
    public required int TrueCause { get; init; }

    public required bool IsCallback { get; init; }

    public required CallNote Note { get; init; }

    public required int Van { get; init; }

    public int VisitDay { get; set; } = int.MaxValue;

    public int ClosedDay { get; set; } = int.MaxValue;

    public string Technician { get; set; } = "";

    public JobState State { get; set; }

    /// <summary>Index of what the technician took it for; null: not seen yet.</summary>
    public int? Diagnosis { get; set; }

    public int Visits { get; set; }

    public int LabourMinutes { get; set; }

    public List<FittedPart> Parts { get; } = [];

    /// <summary>Nothing about it will change any more.</summary>
    public bool IsFinal { get; set; }

    public string ShownKind => Note.ShownKind;

    public bool DiagnosisRight => Diagnosis == TrueCause;

    /// <summary>What the log shows at the end of a day.</summary>
    public JobState StateOn(int day) =>
        ClosedDay <= day ? State : VisitDay <= day && Diagnosis is not null ? JobState.PartOrdered : JobState.Waiting;

    /// <summary>Day of the last change a reader on <paramref name="day"/> could see.</summary>
    public int ChangedDay(int day) => ClosedDay <= day ? ClosedDay : VisitDay <= day ? VisitDay : OpenedDay;
}
