namespace PartsSignal.Pipeline.Reading;

/// <summary>Where a table is, for people.</summary>
internal static class TablePlace
{
    /// <summary>The file, with the sheet of a workbook: <c>shop.xlsx, sheet Calls</c>.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="sheet">Name of the sheet; null: a text file.</param>
    public static string Of(string file, string? sheet) => sheet is null ? file : $"{file}, sheet {sheet}";
}
