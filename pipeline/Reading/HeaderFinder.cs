namespace PartsSignal.Pipeline.Reading;

/// <summary>Finds the header among the first rows; notes may stand above it.</summary>
internal static class HeaderFinder
{
    private const int MostHeaderCharacters = 160;
    private const int FewestPeriods = 3;
    private const int FewestNumbered = 3;

    /// <summary>Position of the header in the rows, or -1 where none looks like one.</summary>
    /// <param name="rows">First rows of the table.</param>
    /// <param name="wanted">Headers that a map names; empty: go by looks.</param>
    public static int Find(IReadOnlyList<SampleRow> rows, IReadOnlyCollection<string> wanted)
    {
        if (wanted.Count > 0)
        {
            int[] hits = [.. rows.Select(r => Hits(r, wanted))];
            int best = hits.DefaultIfEmpty(0).Max();
            return best * 2 >= wanted.Count && best > 0 ? Array.IndexOf(hits, best) : ByLooks(rows);
        }

        return ByLooks(rows);
    }

    /// <summary>How many of the wanted headers a row has.</summary>
    public static int Hits(SampleRow row, IReadOnlyCollection<string> wanted)
    {
        HashSet<string> cells = [.. row.Cells.Select(ColumnNames.Loose)];
        return wanted.Count(w => cells.Contains(ColumnNames.Loose(w)));
    }

    private static int ByLooks(IReadOnlyList<SampleRow> rows)
    {
        int width = UsualWidth(rows);
        int filled = Math.Min(width, UsualFilled(rows));
        bool IsHeader(int i) => rows[i].Filled * 2 > filled && ((LooksLikeHeader(rows[i]) && !MonthsGoOn(rows, i)) || StandsOut(rows, i));
        int[] headers = [.. Enumerable.Range(0, rows.Count).Where(IsHeader)];

        // On a sheet, notes may stand beside the last column that has a heading.
        return headers.Where(i => Width(rows[i]) >= width).Concat(headers.Where(i => rows[i].IsSheet && StandsOut(rows, i))).FirstOrDefault(-1);
    }

    private static int UsualFilled(IReadOnlyList<SampleRow> rows)
    {
        int[] filled = [.. rows.Select(r => r.Filled).Order()];
        return filled.Length == 0 ? 1 : filled[filled.Length / 2];
    }

    // A long heading, or one that begins with a digit, is one all the same where words stand above columns of figures.
    private static bool StandsOut(IReadOnlyList<SampleRow> rows, int at)
    {
        SampleRow row = rows[at];
        SampleRow[] below = [.. rows.Skip(at + 1).Take(30)];
        string[] cells = [.. row.Cells.Select(c => c.Trim())];
        int figures = cells.Count(c => c.Length > 0 && char.IsAsciiDigit(c[0]));
        int contrast = 0;
        for (int i = 0; i < cells.Length; i++)
        {
            string[] under = [.. below.Where(r => i < r.Cells.Count && !string.IsNullOrWhiteSpace(r.Cells[i])).Select(r => r.Cells[i].Trim())];
            contrast += cells[i].Length > 0 && !char.IsAsciiDigit(cells[i][0]) && under.Length >= 3 && under.Count(u => char.IsAsciiDigit(u[0])) * 10 >= under.Length * 9 ? 1 : 0;
        }

        return contrast >= 2 && figures * 8 <= row.Filled && cells.All(c => c.Length <= MostHeaderCharacters)
            && cells.Where(c => c.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).Count() * 10 >= row.Filled * 8;
    }

    /// <summary>The number of cells most rows have; of equally common ones the larger.</summary>
    public static int UsualWidth(IReadOnlyList<SampleRow> rows) => rows
        .GroupBy(Width)
        .OrderByDescending(g => g.Count())
        .ThenByDescending(g => g.Key)
        .Select(g => g.Key)
        .FirstOrDefault(1);

    // All rows of a sheet are as wide as the sheet, so there the last filled cell counts.
    private static int Width(SampleRow row) => row.IsSheet ? LastFilled(row) : row.Cells.Count;

    private static int LastFilled(SampleRow row)
    {
        int n = row.Cells.Count;
        while (n > 0 && string.IsNullOrWhiteSpace(row.Cells[n - 1]))
        {
            n--;
        }

        return n;
    }

    private static bool LooksLikeHeader(SampleRow row)
    {
        var filled = row.Cells.Where(c => !string.IsNullOrWhiteSpace(c)).Select(c => c.Trim()).ToList();
        int periods = filled.Count(IsPeriod);
        bool months = periods >= FewestPeriods && periods < filled.Count && filled.Where(IsPeriod).Distinct(StringComparer.Ordinal).Count() == periods;
        bool numbered = filled.Count >= FewestNumbered && filled.Count(IsNumbered) * 10 >= filled.Count * 9;
        return filled.Count > 0
            && filled.Distinct(StringComparer.OrdinalIgnoreCase).Count() * 10 >= filled.Count * 6
            && filled.All(c => c.Length <= 60 && (!char.IsAsciiDigit(c[0]) || (months && IsPeriod(c)) || (numbered && IsNumbered(c))))
            && !row.Forms.Any(f => f is CellForm.Number or CellForm.Date or CellForm.DamagedNumber);
    }

    // Months below or above months are cells of a column of months.
    private static bool MonthsGoOn(IReadOnlyList<SampleRow> rows, int at)
    {
        int[] months = [.. Enumerable.Range(0, rows[at].Cells.Count).Where(i => IsPeriod(rows[at].Cells[i].Trim()))];
        return rows.Where((_, i) => i != at).Any(r => months.Any(i => i < r.Cells.Count && IsPeriod(r.Cells[i].Trim())));
    }

    // Months that stand as columns: 2024-05, 05/2024, 202405.
    private static bool IsPeriod(string cell)
    {
        string digits = string.Concat(cell.Where(char.IsAsciiDigit));
        return digits.Length == 6 && cell.Length <= 7 && cell.All(c => char.IsAsciiDigit(c) || c is '-' or '/' or '.')
            && (IsMonthOf(digits[..4], digits[4..]) || IsMonthOf(digits[2..], digits[..2]));
    }

    private static bool IsMonthOf(string year, string month) =>
        (year.StartsWith("19", StringComparison.Ordinal) || year.StartsWith("20", StringComparison.Ordinal)) && string.CompareOrdinal(month, "01") >= 0 && string.CompareOrdinal(month, "12") <= 0;

    // Columns that an office numbers: 12 customer, 13 model.
    private static bool IsNumbered(string cell)
    {
        int end = 0;
        while (end < cell.Length && char.IsAsciiDigit(cell[end]))
        {
            end++;
        }

        ReadOnlySpan<char> rest = cell.AsSpan(end).TrimStart(" .:)-_");
        return end is > 0 and <= 3 && rest.Length < cell.Length - end && rest.Length >= 2 && char.IsLetter(rest[0]);
    }
}
