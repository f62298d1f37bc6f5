
namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Finds columns that repeat across a row (<c>Part 1, Qty 1, Part 2, Qty 2</c>; <c>Van 1, Van 2</c>; <c>Jan 2025, Feb 2025,
/// Mar 2025</c>), so that each stem is decided once.
/// </summary>
internal static class RepeatedColumns
{
    /// <summary>The columns, of those that repeat only the first.</summary>
    public static IReadOnlyList<ColumnSample> Collapse(IReadOnlyList<ColumnSample> columns)
    {
        Dictionary<ColumnSample, ColumnSample[]> groups = Find(columns);
        var left = new HashSet<ColumnSample>(groups.Values.SelectMany(g => g.Skip(1)));
        return [.. columns.Where(c => !left.Contains(c)).Select(c => groups.TryGetValue(c, out ColumnSample[]? all)
            ? new ColumnSample(c.Name, c.Index, c.Cells) { Values = c.Values, Repeats = all.Length, Names = [.. all.Select(a => a.Name)] }
            : c)];
    }

    private static Dictionary<ColumnSample, ColumnSample[]> Find(IReadOnlyList<ColumnSample> columns)
    {
        Dictionary<ColumnSample, ColumnSample[]> months = Months(columns);
        var ofMonths = new HashSet<ColumnSample>(months.Values.SelectMany(m => m));
        var numbered = columns
            .Where(c => !ofMonths.Contains(c))
            .Select(c => (Column: c, Part: HeaderText.Numbered(c.Name)))
            .Where(c => c.Part is not null)
            .Select(c => (c.Column, Stem: c.Part!.Value.Stem.ToUpperInvariant(), c.Part.Value.Number))
            .ToList();

        // A header that stands twice is the first without a number and the second with (2).
        foreach ((_, string stem, _) in numbered.Where(n => n.Number == 2).ToList())
        {
            ColumnSample? plain = columns.FirstOrDefault(c => c.Name.Equals(stem, StringComparison.OrdinalIgnoreCase));
            if (plain is not null && !numbered.Any(n => n.Stem == stem && n.Number == 1))
            {
                numbered.Add((plain, stem, 1));
            }
        }

        return numbered
            .GroupBy(n => n.Stem, StringComparer.Ordinal)
            .Select(g => g.OrderBy(n => n.Number).Select(n => n.Column).Distinct().ToArray())
            .Where(g => g.Length > 1)
            .Concat(months.Values)
            .ToDictionary(g => g[0]);
    }

    private static Dictionary<ColumnSample, ColumnSample[]> Months(IReadOnlyList<ColumnSample> columns) => columns
        .Select(c => (Column: c, Month: MonthHeaders.Read(c.Name)))
        .Where(c => c.Month is not null && (c.Column.IsNumbers || c.Column.Filled == 0))
        .GroupBy(c => c.Month!.Value.Stem, StringComparer.Ordinal)
        .Select(g => g.DistinctBy(c => c.Month!.Value.FirstDay).Select(c => c.Column).ToArray())
        .Where(g => g.Length >= MonthHeaders.Fewest)
        .ToDictionary(g => g[0]);
}
