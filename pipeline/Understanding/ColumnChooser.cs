namespace PartsSignal.Pipeline.Understanding;

/// <summary>Assigns columns to the fields of a kind by the words of the header and the cells.</summary>
internal static class ColumnChooser
{
    private const double Least = 0.45;

    /// <summary>What the columns could be as that kind, and how well they fit.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="columns">The columns; those of part groups left out.</param>
    public static (IReadOnlyDictionary<string, ColumnProfile> Fields, double Score) Choose(string kind, IReadOnlyList<ColumnProfile> columns)
    {
        var chosen = new Dictionary<string, ColumnProfile>(StringComparer.Ordinal);
        var taken = new HashSet<int>();
        double total = 0;
        foreach ((HeaderField field, ColumnProfile column, double score) in HeaderField.All
            .Where(f => f.Kind == kind)
            .SelectMany(f => columns.Select(c => (Field: f, Column: c, Score: f.Match(c.Name) * ContentFit.Score(f.Content, c))))
            .Where(m => m.Score >= Least)
            .OrderByDescending(m => m.Score)
            .ThenBy(m => m.Column.Index))
        {
            if (!chosen.ContainsKey(field.Field) && taken.Add(column.Index))
            {
                chosen.Add(field.Field, column);
                total += score;
            }
        }

        // The only number on an order line is the part's, whoever's number it is.
        if (!chosen.ContainsKey("part") && chosen.Remove("other_part", out ColumnProfile? only))
        {
            chosen.Add("part", only);
        }

        total += kind == "jobs" ? ByContents(columns, chosen, taken) : 0;
        return (chosen, total);
    }

    // Where the header says nothing the cells may: in a job log the first dates are the call, the longest text the complaint.
    private static double ByContents(IReadOnlyList<ColumnProfile> columns, Dictionary<string, ColumnProfile> chosen, HashSet<int> taken)
    {
        double total = 0;
        void Add(string field, Func<ColumnProfile, bool> fits, Func<ColumnProfile, double> rank, double worth)
        {
            ColumnProfile? best = chosen.ContainsKey(field) ? null : columns.Where(c => !taken.Contains(c.Index) && c.Filled > 0 && fits(c)).OrderByDescending(rank).ThenBy(c => c.Index).FirstOrDefault();
            if (best is not null)
            {
                chosen.Add(field, best);
                taken.Add(best.Index);
                total += worth;
            }
        }

        Add("opened_on", c => c.DateShare >= 0.9, c => c.Filled, 0.3);
        Add("complaint", c => c.TextShare >= 0.4, c => c.TextShare, 0.3);
        Add("email", c => c.EmailShare >= 0.5, c => c.EmailShare, 0.1);
        Add("phone", c => c.PhoneShare >= 0.6, c => c.PhoneShare, 0.1);
        return total;
    }
}
