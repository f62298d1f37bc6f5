namespace PartsSignal.Pipeline.Understanding;

/// <summary>Finds part columns that repeat across a job row: <c>Part 1, Qty 1, Part 2, Qty 2</c>.</summary>
internal static class PartGroupFinder
{
    /// <summary>The groups, each field to header; empty: the file has none.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Find(IReadOnlyList<string> columns)
    {
        var numbered = columns
            .Select(c => (Column: c, Part: HeaderText.Numbered(c)))
            .Where(c => c.Part is not null)
            .Select(c => (c.Column, c.Part!.Value.Stem, c.Part.Value.Number))
            .ToList();

        // A header that stands twice is the first without a number and the second with (2).
        foreach (string stem in numbered.Where(n => n.Number == 2).Select(n => n.Stem).ToList())
        {
            string? plain = columns.FirstOrDefault(c => c.Equals(stem, StringComparison.OrdinalIgnoreCase));
            if (plain is not null && !numbered.Any(n => n.Stem == stem && n.Number == 1))
            {
                numbered.Add((plain, stem, 1));
            }
        }

        var fields = Fields(numbered.Where(n => numbered.Any(m => m.Stem == n.Stem && m.Number != n.Number)).Select(n => n.Stem).Distinct(StringComparer.Ordinal));
        if (!fields.ContainsValue("part") && !fields.ContainsValue("description"))
        {
            return [];
        }

        return [.. numbered
            .Where(n => fields.ContainsKey(n.Stem))
            .GroupBy(n => n.Number)
            .OrderBy(g => g.Key)
            .Select(g => (IReadOnlyDictionary<string, string>)g.GroupBy(n => fields[n.Stem]).ToDictionary(f => f.Key, f => f.First().Column, StringComparer.Ordinal))];
    }

    // Each stem gets the field it names best; each field goes to one stem.
    private static Dictionary<string, string> Fields(IEnumerable<string> stems)
    {
        HeaderField[] line = [.. HeaderField.All.Where(f => f.Kind == "jobs" && Config.FieldCatalog.PartLine.Contains(f.Field))];
        var chosen = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach ((string stem, string field, double score) in stems
            .SelectMany(s => line.Select(f => (Stem: s, f.Field, Score: Math.Max(f.Match(s), f.Match(WithoutPart(s))))))
            .Where(m => m.Score >= 0.5)
            .OrderByDescending(m => m.Score)
            .ThenBy(m => m.Stem, StringComparer.Ordinal))
        {
            if (!chosen.ContainsKey(stem) && !chosen.ContainsValue(field) && score > 0)
            {
                chosen.Add(stem, field);
            }
        }

        return chosen;
    }

    // "Part Qty" is the quantity, "Part No" is the part.
    private static string WithoutPart(string stem) =>
        stem.StartsWith("part ", StringComparison.OrdinalIgnoreCase) && !stem.EndsWith(" no", StringComparison.OrdinalIgnoreCase) ? stem[5..] : stem;
}
