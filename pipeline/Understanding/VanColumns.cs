using System.Globalization;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Reads pieces on hand from a column for each van, each as rows of its own.</summary>
internal static class VanColumns
{
    /// <summary>Completes the map of pieces on hand, which may stand in a column for each van: jobs name the van by its number or by who drives it.</summary>
    public static void Complete(OpenMaps maps, int t)
    {
        if (maps[t]!.Kind == "van_counts" && maps[t]!.Columns.GetValueOrDefault("on_hand", []) is var counts && MonthHeaders.AreMonths(counts))
        {
            maps.Note(t, $"Months in columns: '{counts[0]}' to '{counts[^1]}'; each is loaded as rows counted on its first day.");
            return;
        }

        if (maps[t]!.Kind != "van_counts" || maps[t]!.Columns.ContainsKey("van"))
        {
            return;
        }

        IEnumerable<string> vans = maps.Others(t).Where(o => maps[o]!.Kind == "jobs").SelectMany(o => new[] { maps.Column(o, "van"), maps.Column(o, "technician") }).OfType<ColumnSample>().SelectMany(c => c.Texts);
        string[] free = [.. maps.Tables[t].AllColumns.Where(c => (maps.FieldOf(t, c) is null or "on_hand") && c.IsNumbers).Select(c => c.Name)];
        if (Complete(maps[t]!, free, vans.ToHashSet()) is { } found)
        {
            maps[t] = found.Map;
            maps.Note(t, found.Note);
        }
    }

    // The map with those columns, and what to note; null if there are not at least two. Free are the headers of columns of
    // numbers that no other field reads; vans are what jobs call their vans, or who drives them.
    private static (SourceMap Map, string Note)? Complete(SourceMap map, IReadOnlyList<string> free, IReadOnlySet<string> vans)
    {
        string? Van(string header) => vans.FirstOrDefault(v => v.Equals(header, StringComparison.OrdinalIgnoreCase))
            ?? (HeaderText.Numbered(header) is { } numbered ? vans.FirstOrDefault(v => v == numbered.Number.ToString(CultureInfo.InvariantCulture)) : null);
        string[] read = [.. map.Columns.GetValueOrDefault("on_hand", [])];
        bool byNumber = read.Any(h => HeaderText.Numbered(h) is not null && Van(h) is { } van && !van.Equals(h, StringComparison.OrdinalIgnoreCase));
        string? Said(string header) => Van(header) ?? (byNumber && HeaderText.Numbered(header) is { } numbered ? numbered.Number.ToString(CultureInfo.InvariantCulture) : null);
        string[] headers = read.Length > 1 ? read : [.. free.Where(h => Van(h) is not null)];
        if (headers.Length < 2)
        {
            return null;
        }

        var named = headers.Where(h => Said(h) is { } van && van != h).ToDictionary(h => h, h => Said(h)!);
        var words = new Dictionary<string, IReadOnlyDictionary<string, string>>(map.Words);
        if (named.Count > 0)
        {
            words["van"] = named;
        }

        var columns = new Dictionary<string, IReadOnlyList<string>>(map.Columns) { ["on_hand"] = headers };
        string said = string.Join(", ", headers.Select(h => named.TryGetValue(h, out string? van) ? $"'{h}' is van {van}" : $"'{h}'"));
        return (map with { Columns = columns, Words = words }, $"Vans in columns: {said}; each is loaded as rows of its own.");
    }
}
