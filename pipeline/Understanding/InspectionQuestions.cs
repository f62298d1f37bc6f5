using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What a person should decide or know before a file is loaded.</summary>
internal static class InspectionQuestions
{
    private static readonly string[] Personal = ["customer_name", "phone", "address", "email"];
    private static readonly string[] Codes = ["part", "other_part", "old_part", "new_part", "alias"];

    /// <summary>Everything that needs a decision.</summary>
    public static IEnumerable<string> Find(SourceMap map, IReadOnlyList<ColumnProfile> columns, WordSets words)
    {
        Dictionary<string, ColumnProfile> byField = ByField(map, columns);
        ColumnProfile[] dates = [.. byField.Where(f => f.Key.EndsWith("_on", StringComparison.Ordinal)).Select(f => f.Value).Distinct()];
        foreach (ColumnProfile mixed in dates.Where(d => d.Dates.IsMixed))
        {
            yield return $"Dates: '{mixed.Name}' has {mixed.Dates.DayFirst:N0} that can only be day-first and {mixed.Dates.MonthFirst:N0} that can only be month-first. One order holds for the file; the others will be rejects.";
        }

        foreach (ColumnProfile mixed in Columns(byField, "price", "unit_cost", "age_years").Concat(GroupColumns(map, columns, "price")).Where(c => c.Numbers.IsMixed).Distinct())
        {
            yield return $"Amounts: '{mixed.Name}' has {mixed.Numbers.Point:N0} with a decimal point and {mixed.Numbers.Comma:N0} with a decimal comma. Set numberStyle to point or comma.";
        }

        foreach (ColumnProfile damaged in Columns(byField, Codes).Concat(GroupColumns(map, columns, "part")).Where(c => c.Damaged > 0).Distinct())
        {
            yield return $"Part numbers: {damaged.Damaged:N0} in '{damaged.Name}' were turned into numbers or dates by a spreadsheet. They will be rejects; export the file anew with that column as text.";
        }

        if (map.Kind == "jobs")
        {
            foreach (string doubt in OfJobs(byField, columns, words, map))
            {
                yield return doubt;
            }
        }
    }

    /// <summary>What is good to know.</summary>
    public static IEnumerable<string> Notes(SourceMap map, IReadOnlyList<ColumnProfile> columns)
    {
        Dictionary<string, ColumnProfile> byField = ByField(map, columns);
        string[] hashed = [.. Personal.Where(byField.ContainsKey).Select(f => byField[f].Name)];
        if (hashed.Length > 0)
        {
            yield return $"Personal data in {string.Join(", ", hashed)}: only turned into identifiers, never stored.";
        }

        HashSet<string> mapped = [.. byField.Values.Select(c => c.Name), .. map.PartGroups.SelectMany(g => g.Values)];
        foreach (ColumnProfile personal in columns.Where(c => !mapped.Contains(c.Name) && (c.EmailShare >= 0.2 || c.PhoneShare >= 0.5)))
        {
            yield return $"Personal data in {personal.Name}: the column is not read.";
        }

        if (map.Kind == "jobs" && byField.ContainsKey("closed_on") && !byField.ContainsKey("opened_on"))
        {
            yield return "No column holds the day the customer called, so the closing day is used instead.";
        }

        if (map.Kind == "part_orders" && !byField.ContainsKey("order_id"))
        {
            yield return "No column holds order numbers: each different row counts as an order of its own.";
        }

        if (map.Kind == "jobs" && !byField.ContainsKey("job_id"))
        {
            yield return "No column holds job numbers: each different row counts as a job, and the same row again as the same job.";
        }
    }

    private static IEnumerable<string> OfJobs(Dictionary<string, ColumnProfile> byField, IReadOnlyList<ColumnProfile> columns, WordSets words, SourceMap map)
    {
        ColumnProfile? model = byField.GetValueOrDefault("model");
        if (model is null || model.Filled * 5 < model.Cells)
        {
            foreach (ColumnProfile notes in columns.Where(c => c != model && c.TextShare >= 0.3 && c.ModelShare >= 0.2))
            {
                yield return $"Model numbers: {notes.ModelShare:P0} of the cells in '{notes.Name}' hold something like one, and {(model is null ? "no column" : "hardly a cell of '" + model.Name + "'")} gives the model. Give it a column of its own if you can.";
            }
        }

        foreach ((string field, string name, Func<string, bool> isKnown) in new (string, string, Func<string, bool>)[]
        {
            ("outcome", "Outcomes", w => words.Outcomes.Find(w) is not null || words.Statuses.FindWhole(w) is not null),
            ("status", "Statuses", w => words.Statuses.Find(w) is not null),
            ("visit_reason", "Reasons for a visit", w => words.Reasons.Find(w) is not null),
        })
        {
            if (UnknownWords(field, isKnown) is { Length: > 0 } unknown)
            {
                yield return $"{name}: no table knows {string.Join(", ", unknown.Select(w => $"'{MaskedCells.Scrubbed(unknown, w)}'"))}. Put them under words.{field} in the map; until then they count as unknown.";
            }
        }

        string[] UnknownWords(string field, Func<string, bool> isKnown)
        {
            IReadOnlyDictionary<string, string>? own = map.Words.GetValueOrDefault(field);
            return byField.TryGetValue(field, out ColumnProfile? column) && !column.ManyDistinct && !map.Lists.ContainsKey(field)
                ? [.. column.Distinct.Where(w => own?.ContainsKey(w) != true && !isKnown(w)).Order(StringComparer.Ordinal).Take(10)]
                : [];
        }
    }

    private static Dictionary<string, ColumnProfile> ByField(SourceMap map, IReadOnlyList<ColumnProfile> columns)
    {
        var found = new Dictionary<string, ColumnProfile>(StringComparer.Ordinal);
        foreach ((string field, IReadOnlyList<string> names) in map.Columns)
        {
            if (columns.FirstOrDefault(c => c.Name == names.FirstOrDefault()) is { } column)
            {
                found[field] = column;
            }
        }

        return found;
    }

    private static IEnumerable<ColumnProfile> Columns(Dictionary<string, ColumnProfile> byField, params string[] fields) => fields.Where(byField.ContainsKey).Select(f => byField[f]);

    private static IEnumerable<ColumnProfile> GroupColumns(SourceMap map, IReadOnlyList<ColumnProfile> columns, string field) =>
        map.PartGroups.Select(g => g.GetValueOrDefault(field)).Select(n => columns.FirstOrDefault(c => c.Name == n)).OfType<ColumnProfile>();
}
