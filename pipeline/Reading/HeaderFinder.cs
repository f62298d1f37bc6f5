namespace PartsSignal.Pipeline.Reading;

/// <summary>Finds the header among the first rows; notes may stand above it.</summary>
internal static class HeaderFinder
{
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
        for (int i = 0; i < rows.Count; i++)
        {
            if (Width(rows[i]) >= width && rows[i].Filled * 2 > width && LooksLikeHeader(rows[i]))
            {
                return i;
            }
        }

        return -1;
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
        return filled.Count > 0
            && filled.Distinct(StringComparer.OrdinalIgnoreCase).Count() * 10 >= filled.Count * 6
            && filled.All(c => c.Length <= 60 && !char.IsAsciiDigit(c[0]))
            && !row.Forms.Any(f => f is CellForm.Number or CellForm.Date or CellForm.DamagedNumber);
    }
}
