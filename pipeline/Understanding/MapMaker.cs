using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Makes the map of a table from what it is taken for.</summary>
internal static class MapMaker
{
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

        var given = columns.OrderBy(c => c.Column.Index).ToDictionary(c => c.Field, c => Headers(reading, c.Field, c.Column), StringComparer.Ordinal);
        IReadOnlyList<IReadOnlyDictionary<string, string>> groups = Groups(repeated);
        var map = new SourceMap { Files = table.File, Sheet = table.Sheet, Kind = reading.Kind, Columns = given, PartGroups = groups };
        return map with
        {
            DateOrder = answers.Dates(reading.Key) ?? ShopStyles.OrderOf(ShopStyles.Dates(map, profiles)),
            NumberStyle = answers.Numbers(reading.Key) ?? ShopStyles.StyleOf(ShopStyles.Amounts(map, profiles)),
        };
    }

    // Pieces on hand may stand in a column a van or a month, of which those still to come are empty; of other columns that repeat only the first is one.
    private static IReadOnlyList<string> Headers(TableReading reading, string field, ColumnSample column)
    {
        if (reading.Kind != "van_counts" || field != "on_hand" || column.Repeats < 2)
        {
            return [column.Name];
        }

        string[] filled = [.. column.Names.Where(n => reading.Table.AllColumns.FirstOrDefault(c => c.Name == n) is not { Values.Filled: 0 })];
        return filled.Length > 1 ? filled : column.Names;
    }

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
}
