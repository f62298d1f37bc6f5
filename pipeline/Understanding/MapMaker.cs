using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Makes the map of a table from what it is taken for.</summary>
internal static class MapMaker
{
    private static readonly string[] Amounts = ["price", "unit_cost", "age_years"];

    /// <summary>The map.</summary>
    /// <param name="reading">What the table is taken for; of some kind.</param>
    /// <param name="profiles">Its columns, as the file has them.</param>
    /// <param name="answers">What a person has settled.</param>
    public static SourceMap Make(TableReading reading, IReadOnlyList<ColumnProfile> profiles, ReadingAnswers answers)
    {
        FieldChoice choice = reading.Choice!;
        TableSample table = reading.Table.Sample;
        var columns = new List<(string Field, ColumnSample Column)>();
        var repeated = new List<(string Field, ColumnSample Column)>();
        for (int f = 0; f < choice.Fields.Count; f++)
        {
            if (choice.Columns[f] is var c and >= 0)
            {
                ColumnSample column = table.Columns[c];
                (column.Repeats > 1 && reading.Kind == "jobs" && FieldCatalog.PartLine.Contains(choice.Fields[f]) ? repeated : columns).Add((choice.Fields[f], column));
            }
        }

        var given = columns.OrderBy(c => c.Column.Index).ToDictionary(c => c.Field, c => Headers(reading.Kind, c.Field, c.Column), StringComparer.Ordinal);
        IReadOnlyList<IReadOnlyDictionary<string, string>> groups = Groups(repeated);
        HashSet<string> dates = [.. given.Where(g => ContentFits.ClassOf(g.Key) is ContentClass.Date or ContentClass.Year).SelectMany(g => g.Value)];
        HashSet<string> prices = [.. groups.Select(g => g.GetValueOrDefault("price")).OfType<string>(), .. Amounts.Where(given.ContainsKey).SelectMany(a => given[a])];
        return new SourceMap
        {
            Files = table.File,
            Sheet = table.Sheet,
            Kind = reading.Kind,
            DateOrder = answers.Dates(reading.Key) ?? OrderOf([.. profiles.Where(p => dates.Contains(p.Name))]),
            NumberStyle = answers.Numbers(reading.Key) ?? StyleOf([.. profiles.Where(p => prices.Contains(p.Name))]),
            Columns = given,
            PartGroups = groups,
        };
    }

    // Pieces on hand may stand in a column a van; of other columns that repeat only the first is one.
    private static IReadOnlyList<string> Headers(string kind, string field, ColumnSample column) =>
        kind == "van_counts" && field == "on_hand" && column.Repeats > 1 ? column.Names : [column.Name];

    private static IReadOnlyList<IReadOnlyDictionary<string, string>> Groups(List<(string Field, ColumnSample Column)> repeated)
    {
        if (!repeated.Exists(r => r.Field is "part" or "description"))
        {
            return [];
        }

        int groups = repeated.Max(r => r.Column.Names.Count);
        return [.. Enumerable.Range(0, groups)
            .Select(i => (IReadOnlyDictionary<string, string>)repeated.Where(r => i < r.Column.Names.Count).ToDictionary(r => r.Field, r => r.Column.Names[i], StringComparer.Ordinal))
            .Where(g => g.ContainsKey("part") || g.ContainsKey("description"))];
    }

    private static string? OrderOf(ColumnProfile[] dates)
    {
        int day = dates.Sum(d => d.Dates.DayFirst);
        int month = dates.Sum(d => d.Dates.MonthFirst);
        return day == 0 && month == 0 ? null : day >= month ? "dmy" : "mdy";
    }

    private static string? StyleOf(ColumnProfile[] amounts)
    {
        int point = amounts.Sum(a => a.Numbers.Point);
        int comma = amounts.Sum(a => a.Numbers.Comma);
        return point == 0 && comma == 0 ? null : comma > point ? "comma" : "point";
    }
}
