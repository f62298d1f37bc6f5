namespace PartsSignal.Pipeline.Understanding;

/// <summary>What is proposed for one column of a file.</summary>
/// <param name="Column">Name of the column.</param>
/// <param name="Field">Field it gives; null: it is not read.</param>
/// <param name="Reason">Why.</param>
internal sealed record ProposedColumn(string Column, string? Field, string Reason);
