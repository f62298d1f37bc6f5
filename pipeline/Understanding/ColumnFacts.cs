namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the cells of a column plainly are: words, codes, numbers of rows.</summary>
internal static class ColumnFacts
{
    private const double NearlyAll = 0.95;
    private const double Most = 0.8;
    private const double Some = 0.3;
    private const int LettersOfAWord = 5;

    /// <summary>Whether most cells hold a word.</summary>
    public static bool IsWords(ColumnSample column) => column.Filled > 0 && !column.IsNumbers && column.Texts.Count(HoldsWord) >= Most * column.Filled;

    /// <summary>Whether nearly all cells have a digit, and are no days or amounts.</summary>
    public static bool IsCode(ColumnSample column) => column.Filled > 0 && !column.IsDates && !column.IsAmounts && column.Texts.Count(t => t.Any(char.IsAsciiDigit)) >= NearlyAll * column.Filled;

    /// <summary>Whether the cells are codes, each of few rows.</summary>
    public static bool NamesRows(ColumnSample column) => IsCode(column) && column.Distinct >= Some * column.Filled;

    /// <summary>Whether nearly every row has a code of its own.</summary>
    public static bool NamesEachRow(ColumnSample column) => IsCode(column) && column.Distinct >= NearlyAll * column.Filled && column.Filled >= NearlyAll * column.Cells.Length;

    /// <summary>Whether the codes name the rows of the whole table and are no phrases.</summary>
    public static bool IsRowNumber(ColumnSample column) => column.Values.IsKey && IsCode(column) && column.Texts.Count(t => t.Count(c => c == ' ') <= 1) >= NearlyAll * column.Filled;

    private static bool HoldsWord(string text)
    {
        int run = 0;
        foreach (char c in text)
        {
            run = char.IsLetter(c) ? run + 1 : 0;
            if (run == LettersOfAWord)
            {
                return true;
            }
        }

        return false;
    }
}
