namespace PartsSignal.Reports.Monthly;

/// <summary>What is wrong with the data, and what to mend first.</summary>
/// <param name="Files">The books of each file.</param>
/// <param name="Reasons">Rejects by reason, most first.</param>
/// <param name="Faults">Contradictions found in the data, by kind.</param>
/// <param name="Gaps">What is missing on jobs, and what it costs the answers, worst first.</param>
public sealed record DataQualityFacts(
    IReadOnlyList<FileBooks> Files, IReadOnlyList<RejectReason> Reasons, IReadOnlyList<FaultKind> Faults, IReadOnlyList<Gap> Gaps);

/// <summary>The books of one file: read = loaded + duplicate + replaced + rejected.</summary>
public sealed record FileBooks(string File, string Kind, long Read, long Loaded, long Duplicate, long Replaced, long Rejected);

/// <summary>Rows rejected for one reason.</summary>
/// <param name="Code">The reason's code.</param>
/// <param name="Field">The field; null: the whole row.</param>
/// <param name="Rows">How many.</param>
/// <param name="Example">File and line of the first.</param>
/// <param name="Mend">What to do.</param>
public sealed record RejectReason(string Code, string? Field, long Rows, string Example, string Mend);

/// <summary>Contradictions of one kind.</summary>
public sealed record FaultKind(string Kind, long Count, string Example);

/// <summary>Something missing on jobs.</summary>
/// <param name="What">What is missing.</param>
/// <param name="Jobs">Jobs that miss it.</param>
/// <param name="Of">Jobs in all.</param>
/// <param name="Costs">What cannot be answered, or is answered worse, without it.</param>
public sealed record Gap(string What, long Jobs, long Of, string Costs);
