using System.Globalization;
using System.IO.Enumeration;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Brings proposals and what a person settled together.</summary>
internal static class ProposedMaps
{
    /// <summary>Saves proposals and answers. A map that stands in the file stays, unless one of the answers is about its table.</summary>
    /// <param name="folder">Folder of the shop.</param>
    /// <param name="inspection">What was found, with the answers heeded.</param>
    /// <param name="given">Answers given just now.</param>
    /// <param name="write">Whether maps are added for tables that have none.</param>
    /// <param name="before">What was found without the answers given just now.</param>
    /// <returns>What was done, in one line.</returns>
    public static string Save(string folder, ShopInspection inspection, IReadOnlyDictionary<string, string> given, bool write, Func<ShopInspection> before)
    {
        string path = Path.Combine(folder, ShopFile.Name);
        string? text = File.Exists(path) ? File.ReadAllText(path) : null;
        IReadOnlyList<SourceMap> settled = text is null ? [] : ShopFile.Parse(text).Sources;
        HashSet<Inspection> answered = Answered(inspection, given);
        SourceMap[] added = [.. inspection.Tables.Where(t => !settled.Any(m => IsFor(m, t)) && write && t.Map is not null).Select(t => t.Map!)];

        // A map that a person changed stays but for what the answers say; one that is still as it was proposed is proposed anew,
        // also where an answer on another table changes what it points to.
        IReadOnlyList<Inspection> earlier = given.Count == 0 || settled.Count == 0 ? [] : before().Tables;
        HashSet<SourceMap> untouched = [.. settled.Where(m => earlier.Any(t => t.Map is not null && IsFor(m, t) && IsAsProposed(m, t.Map)))];
        answered.UnionWith(inspection.Tables.Where(t => t.Map is not null && settled.FirstOrDefault(m => IsFor(m, t)) is { } now && untouched.Contains(now) && !IsAsProposed(now, t.Map)));
        Inspection[] stay = [.. inspection.Tables.Where(t => t.Map is not null && !answered.Contains(t) && settled.Any(m => IsFor(m, t) && !Same(m, t.Map)))];
        SourceMap[] anew = [.. answered.Where(t => t.Map is not null).Select(t => (Table: t, Map: settled.FirstOrDefault(m => IsFor(m, t)))).Where(t => t.Map is not null || write)
            .Select(t => t.Map is null || untouched.Contains(t.Map) || AnsweredMap.IsOfAnotherKind(t.Map, given) ? t.Table.Map! : AnsweredMap.With(t.Map, given)).Distinct()];
        if (text is not null && inspection.Tables.Where(t => t.Map is null && answered.Contains(t)).Select(t => new SourceMap { Files = t.File, Sheet = t.Sheet, Kind = "" }).ToList() is { Count: > 0 } gone)
        {
            text = ShopFileWriter.Without(text, gone);
        }

        ShopFileWriter.Write(folder, ShopFileWriter.With(text, [.. added, .. anew], given, map => anew.Contains(map)));
        int saved = added.Concat(anew).Distinct().Count();
        string differ = stay.Length == 0 ? "" : $" {string.Join(", ", stay.Select(t => t.File))}: the map in {ShopFile.Name} differs from what is proposed, and stays.";
        return string.Create(CultureInfo.InvariantCulture, $"Saved {saved} {(saved == 1 ? "map" : "maps")}{(given.Count == 0 ? "" : $" and {given.Count} {(given.Count == 1 ? "answer" : "answers")}")} into {path}.{differ} Next: load --input {folder}");
    }

    /// <summary>
    /// The settings with maps for a folder nobody has mapped yet, or whose answers are newer than its maps; and what was
    /// assumed, null where nothing was.
    /// </summary>
    /// <param name="folder">Folder of the shop.</param>
    /// <param name="settings">What its <c>shop.json</c> says.</param>
    /// <param name="cancellation">Stops.</param>
    /// <exception cref="BadInputException">Nobody has mapped the folder, and it holds no table.</exception>
    public static (ShopSettings Settings, string? Assumed) Complete(string folder, ShopSettings settings, CancellationToken cancellation)
    {
        IReadOnlyList<InputFile> files = ShopTables.In(folder, settings.Limits);
        if (settings.Sources.Count > 0)
        {
            string[] unread = [.. files.Where(f => !settings.Sources.Any(m => FileSystemName.MatchesSimpleExpression(m.Files, f.Name, ignoreCase: false))).Select(f => f.Name)];
            ShopSettings answered = settings with { Sources = Answered(files, folder, settings, cancellation) };
            return (answered, unread.Length == 0 ? null : $"Not read, since no map in {ShopFile.Name} names {(unread.Length == 1 ? "it" : "them")}: {string.Join(", ", unread)}. Run inspect --write to have {(unread.Length == 1 ? "it" : "them")} read.");
        }

        if (files.Count == 0)
        {
            throw ShopTables.None(folder);
        }

        ShopInspection inspection = new Inspector(settings.Limits, WordSets.Load(folder), settings.Answers).Inspect(files, cancellation);
        SourceMap[] maps = [.. inspection.Tables.Select(t => t.Map).OfType<SourceMap>()];
        int open = inspection.Questions.Count;
        string assumed = string.Create(CultureInfo.InvariantCulture, $"Assumed: {string.Join(", ", maps.GroupBy(m => m.Kind).Select(g => $"{g.Key} from {string.Join(" and ", g.Select(m => m.Files).Distinct())}"))}.{(open == 0 ? "" : $" {open} {(open == 1 ? "question is" : "questions are")} open: run inspect {folder}.")}");
        string[] refused = [.. inspection.Tables.Where(t => t.Map is null && t.Refusal is not null).Select(t => $"{t.Place}: {t.Refusal}")];
        return (settings with { Sources = maps }, maps.Length == 0 ? null : refused.Length == 0 ? assumed : $"{assumed} Not read: {string.Join(" ", refused)}");
    }

    // The maps that stand, with what was answered since: a table of another kind is read anew.
    private static IReadOnlyList<SourceMap> Answered(IReadOnlyList<InputFile> files, string folder, ShopSettings settings, CancellationToken cancellation)
    {
        SourceMap[] other = [.. settings.Sources.Where(m => AnsweredMap.IsOfAnotherKind(m, settings.Answers))];
        ShopInspection? inspection = other.Length == 0 ? null : new Inspector(settings.Limits, WordSets.Load(folder), settings.Answers).Inspect(files, cancellation);
        return [.. settings.Sources.SelectMany(m => other.Contains(m) ? inspection!.Tables.Where(t => IsFor(m, t)).Select(t => t.Map).OfType<SourceMap>() : [AnsweredMap.With(m, settings.Answers)])];
    }

    // Tables that an answer is about, and those with the same columns.
    private static HashSet<Inspection> Answered(ShopInspection inspection, IReadOnlyDictionary<string, string> given)
    {
        bool IsNamed(Inspection t) => given.Keys.Any(k => k.StartsWith((t.Sheet is null ? t.File : $"{t.File}|{t.Sheet}") + "/", StringComparison.Ordinal));
        Inspection[] named = [.. inspection.Tables.Where(IsNamed)];
        return [.. inspection.Tables.Where(t => named.Any(n => n == t || IsTwin(n, t)))];
    }

    private static bool IsTwin(Inspection a, Inspection b) =>
        a.Columns.Count(c => b.Columns.Any(o => o.Column.Equals(c.Column, StringComparison.OrdinalIgnoreCase))) * 10 >= 7 * Math.Max(a.Columns.Count, b.Columns.Count);

    private static bool IsFor(SourceMap map, Inspection table) =>
        FileSystemName.MatchesSimpleExpression(map.Files, table.File, ignoreCase: false) && (map.Sheet is null || table.Sheet is null || map.Sheet.Equals(table.Sheet, StringComparison.OrdinalIgnoreCase));

    private static bool IsAsProposed(SourceMap map, SourceMap proposed) =>
        Same(map, proposed) && map.Lists.Count == proposed.Lists.Count && map.Lists.All(l => proposed.Lists.GetValueOrDefault(l.Key) == l.Value) && map.DateOrder == proposed.DateOrder && map.NumberStyle == proposed.NumberStyle && map.PartGroups.Count == proposed.PartGroups.Count
        && map.Fixed.Count + map.Words.Count == 0 && map.JobPrefix is null && map.Supplier is null && map.HeaderLine is null && map.Encoding is null && map.Separator is null;

    private static bool Same(SourceMap a, SourceMap b) =>
        a.Kind == b.Kind && a.Columns.Count == b.Columns.Count && a.Columns.All(c => b.Columns.TryGetValue(c.Key, out IReadOnlyList<string>? headers) && headers.SequenceEqual(c.Value, StringComparer.OrdinalIgnoreCase));
}
