using System.IO.Enumeration;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>A map that stands, changed by what a person has answered about its table; everything else in it stays.</summary>
internal static class AnsweredMap
{
    /// <summary>Whether an answer is about a table that the map reads.</summary>
    public static bool IsAbout(SourceMap map, string answer)
    {
        string table = answer.Split('/') is { Length: > 1 } parts ? parts[0] : answer;
        string[] names = table.Split('|');
        return FileSystemName.MatchesSimpleExpression(map.Files, names[0], ignoreCase: false)
            && (map.Sheet is null || names.Length < 2 || map.Sheet.Equals(names[1], StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Whether an answer gives the map's table another kind, so that it has to be read anew.</summary>
    public static bool IsOfAnotherKind(SourceMap map, IReadOnlyDictionary<string, string> answers) =>
        answers.Any(a => IsAbout(map, a.Key) && a.Key.EndsWith("/kind", StringComparison.Ordinal) && a.Value != map.Kind);

    /// <summary>The map with the answers about its columns, dates and numbers.</summary>
    public static SourceMap With(SourceMap map, IReadOnlyDictionary<string, string> answers)
    {
        foreach ((string key, string choice) in answers.Where(a => IsAbout(map, a.Key)))
        {
            string[] parts = key.Split('/', 3);
            map = parts switch
            {
                [_, "dates"] => map with { DateOrder = choice },
                [_, "numbers"] => map with { NumberStyle = choice },
                [_, "field", var field] => choice == ReadingAnswers.Nothing ? WithoutField(map, field) : Gives(map, choice, field),
                [_, "column", var header] => choice == ReadingAnswers.Nothing ? WithoutLists(WithoutColumn(map, header), l => l.Value.Column == header) : Gives(map, header, choice),
                _ => map,
            };
        }

        return map;
    }

    private static SourceMap Gives(SourceMap map, string header, string field)
    {
        bool stands = (map.Columns.TryGetValue(field, out IReadOnlyList<string>? now) && now.Contains(header)) || map.PartGroups.Any(g => g.GetValueOrDefault(field) == header);
        if (stands)
        {
            return map;
        }

        SourceMap without = WithoutLists(WithoutColumn(map, header), l => l.Key == field);
        return without with { Columns = new Dictionary<string, IReadOnlyList<string>>(without.Columns) { [field] = [header] } };
    }

    private static SourceMap WithoutField(SourceMap map, string field) => WithoutLists(map, l => l.Key == field) with
    {
        Columns = map.Columns.Where(c => c.Key != field).ToDictionary(c => c.Key, c => c.Value),
        PartGroups = Filled(map.PartGroups.Select(g => g.Where(c => c.Key != field))),
    };

    private static SourceMap WithoutLists(SourceMap map, Func<KeyValuePair<string, CodeList>, bool> gone) =>
        map with { Lists = map.Lists.Where(l => !gone(l)).ToDictionary(l => l.Key, l => l.Value) };

    private static SourceMap WithoutColumn(SourceMap map, string header) => map with
    {
        Columns = map.Columns.Where(c => !c.Value.Contains(header) || c.Value.Count > 1)
            .ToDictionary(c => c.Key, c => (IReadOnlyList<string>)[.. c.Value.Where(h => h != header)]),
        PartGroups = Filled(map.PartGroups.Select(g => g.Where(c => c.Value != header))),
    };

    private static IReadOnlyList<IReadOnlyDictionary<string, string>> Filled(IEnumerable<IEnumerable<KeyValuePair<string, string>>> groups) =>
        [.. groups.Select(g => (IReadOnlyDictionary<string, string>)g.ToDictionary(c => c.Key, c => c.Value)).Where(g => g.Count > 0)];
}
