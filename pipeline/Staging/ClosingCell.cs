using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging;

/// <summary>A cell for the closing day where people write words as long as there is none: <c>waiting for part</c>, <c>canceled</c>.</summary>
internal static class ClosingCell
{
    /// <summary>The status that the cell tells in place of a day, or null where it holds a day, nothing, or words that no table knows.</summary>
    public static string? Status(MappedRow row, MappedField field, SynonymTable statuses) =>
        !field.IsMapped || row.Span(field) is var cell && (cell.IsEmpty || cell.ContainsAnyInRange('0', '9')) ? null : statuses.FindWhole(row.Word(field));
}
