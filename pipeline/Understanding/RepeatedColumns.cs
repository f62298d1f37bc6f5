
namespace PartsSignal.Pipeline.Understanding;

/// <summary>Finds columns that repeat across a row (<c>Part 1, Qty 1, Part 2, Qty 2</c>; <c>Van 1, Van 2</c>), so that each stem is decided once.</summary>
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
        var numbered = columns
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
            .ToDictionary(g => g[0]);
    }
}
