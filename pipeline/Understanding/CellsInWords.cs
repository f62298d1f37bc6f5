namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the cells of a column are, in words.</summary>
internal static class CellsInWords
{
    /// <summary>The words.</summary>
    public static string Describe(ColumnProfile column) =>
        column.Filled == 0 ? "the column is empty"
        : column.EmailShare >= 0.5 ? "the cells are e-mail addresses"
        : column.DateShare >= 0.8 ? "the cells are dates"
        : column.PhoneShare >= 0.5 ? "the cells are phone numbers"
        : column.NumberShare >= 0.8 ? "the cells are numbers"
        : column.TextShare >= 0.3 ? "the cells are free text"
        : column.CodeShare >= 0.5 ? "the cells are codes"
        : column.ManyDistinct ? "the cells are words"
        : column.Distinct.Count == 1 ? "every cell is the same word" : $"the cells are {column.Distinct.Count} different words";
}
