using System.Globalization;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Reads pieces on hand from a column for each van, each as rows of its own.</summary>
internal static class VanColumns
{
    private const double Plainly = 0.6;
    private const double NearlyAll = 0.95;
    private const int ShortestName = 3;
    private const int MostPlaces = 30;
    private static readonly string[] NotCounts = ["part", "other_part", "alias", "price", "unit_cost", "quantity", "order_id", "job_id"];

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
        ColumnSample[] free = [.. maps.Tables[t].AllColumns.Where(c => (maps.FieldOf(t, c) is null or "on_hand") && c.IsNumbers)];
        if (Complete(maps[t]!, free, vans.ToHashSet()) is { } found)
        {
            maps[t] = found.Map;
            maps.Note(t, found.Note);
        }
    }

    // The map with those columns, and what to note; null if there are not at least two. Free are columns of numbers that no
    // other field reads; vans are what jobs call their vans, or who drives them.
    private static (SourceMap Map, string Note)? Complete(SourceMap map, IReadOnlyList<ColumnSample> free, IReadOnlySet<string> vans)
    {
        string? Van(string header) => vans.FirstOrDefault(v => v.Equals(header, StringComparison.OrdinalIgnoreCase))
            ?? (HeaderText.Numbered(header) is { } numbered ? vans.FirstOrDefault(v => v == numbered.Number.ToString(CultureInfo.InvariantCulture)) : null);
        string[] read = [.. map.Columns.GetValueOrDefault("on_hand", [])];
        bool byNumber = read.Any(h => HeaderText.Numbered(h) is not null && Van(h) is { } van && !van.Equals(h, StringComparison.OrdinalIgnoreCase));
        string? Said(string header) => Van(header) ?? (byNumber && HeaderText.Numbered(header) is { } numbered ? numbered.Number.ToString(CultureInfo.InvariantCulture) : null);
        string[] headers = read.Length > 1 ? read : [.. free.Select(c => c.Name).Where(h => Van(h) is not null)];
        headers = headers.Length < 2 ? SideBySide(free, vans) : headers;
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

    // Columns of counts where one heading at least has a word for a van, or the name of somebody who drives one. Their sum is no van.
    private static string[] SideBySide(IReadOnlyList<ColumnSample> free, IReadOnlySet<string> vans)
    {
        HashSet<string> names = [.. vans.SelectMany(PlainHeader.Words).Where(w => w.Length >= ShortestName && w.Any(char.IsLetter))];
        bool IsPerson(ColumnSample column) => PlainHeader.Words(column.Name).Any(names.Contains);
        ColumnSample[] counts = [.. free.Where(c => AreCounts(c) && (IsPerson(c) || !IsOther(c)))];
        counts = [.. counts.Where(c => !IsSumOfOthers(c, counts))];
        return counts.Any(c => IsPerson(c) || PlainHeader.Words(c.Name).Any(w => Named(w, "van") >= Plainly)) ? [.. counts.Select(c => c.Name)] : [];
    }

    /// <summary>Whether most cells have a word for a van or a store, and few of them differ.</summary>
    public static bool ArePlaces(ColumnSample column) =>
        column.Filled > 0 && !column.IsNumbers && column.Distinct <= MostPlaces && column.Texts.Count(IsPlace) * 2 > column.Filled;

    private static bool IsPlace(string cell) => PlainHeader.Words(cell) is { Count: > 0 and <= 3 } words && words.Any(w => Named(w, "van") >= Plainly);

    private static bool AreCounts(ColumnSample column) =>
        column.Numbers.OfType<double>().All(n => n >= 0 && n == Math.Floor(n));

    private static bool IsOther(ColumnSample column) => HeaderLexicon.Shipped.Fields.Any(f => (f[0] == '~' || NotCounts.Contains(f)) && Named(column.Name, f) >= Plainly);

    private static bool IsSumOfOthers(ColumnSample column, ColumnSample[] counts)
    {
        ColumnSample[] others = [.. counts.Where(c => c != column)];
        int[] told = [.. Enumerable.Range(0, column.Numbers.Length).Where(i => column.Numbers[i] is not null)];
        return others.Length > 1 && told.Count(i => column.Numbers[i] == others.Sum(o => o.Numbers[i] ?? 0)) >= NearlyAll * told.Length;
    }

    private static double Named(string header, string field) => HeaderLexicon.Shipped.Match(header)[((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(field)];
}
