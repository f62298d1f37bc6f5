using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Puts what codes mean into the maps of the files that use them, so that staging reads words instead of codes.</summary>
internal static class CodeLists
{
    /// <summary>The sources with the words of their lists.</summary>
    /// <param name="folder">Folder of the files.</param>
    /// <param name="sources">The sources.</param>
    /// <param name="limits">Limits of reading.</param>
    /// <param name="cancellation">Stops.</param>
    /// <exception cref="BadInputException">A list is not there or lacks a column; all faults together.</exception>
    public static IReadOnlyList<SourceFile> Apply(string folder, IReadOnlyList<SourceFile> sources, ReadingLimits limits, CancellationToken cancellation)
    {
        CodeList[] lists = [.. sources.SelectMany(s => s.Map.Lists.Values).Distinct()];
        if (lists.Length == 0)
        {
            return sources;
        }

        var files = new InputFiles(folder, limits);
        var faults = new List<string>();
        var meanings = new Dictionary<CodeList, Dictionary<string, string>>();
        foreach (CodeList list in lists)
        {
            try
            {
                meanings[list] = Read(files, list, limits, cancellation);
            }
            catch (BadInputException bad)
            {
                faults.AddRange(bad.Faults);
            }
        }

        return faults.Count == 0 ? [.. sources.Select(s => s with { Map = WithWords(s.Map, meanings) })] : throw new BadInputException(faults);
    }

    // What the map says of a code or of its meaning holds before the list.
    private static SourceMap WithWords(SourceMap map, Dictionary<CodeList, Dictionary<string, string>> meanings)
    {
        if (map.Lists.Count == 0)
        {
            return map;
        }

        var words = map.Words.ToDictionary(w => w.Key, w => w.Value, StringComparer.Ordinal);
        foreach ((string field, CodeList list) in map.Lists)
        {
            IReadOnlyDictionary<string, string> own = map.Words.GetValueOrDefault(field) ?? new Dictionary<string, string>();
            var all = new Dictionary<string, string>(own, StringComparer.OrdinalIgnoreCase);
            foreach ((string code, string meaning) in meanings[list])
            {
                all.TryAdd(code, own.GetValueOrDefault(meaning, meaning));
            }

            words[field] = all;
        }

        return map with { Words = words };
    }

    // A code that means two things says neither.
    private static Dictionary<string, string> Read(InputFiles files, CodeList list, ReadingLimits limits, CancellationToken cancellation)
    {
        InputFile file = files.Find(list.File).FirstOrDefault() ?? throw new BadInputException($"shop.json: lists: no file is named '{list.File}'.");
        ContentScan scan = ContentScan.Read(file, limits, cancellation);
        using OpenedTable table = OpenedTable.Open(file, scan, new SourceMap { Files = list.File, Kind = "", Sheet = list.Sheet }, limits);
        var names = new ColumnNames(table.Header);
        (int code, int meaning) = (names.Find(list.Code), names.Find(list.Meaning));
        if (code < 0 || meaning < 0)
        {
            throw new BadInputException($"shop.json: lists: {list.File} has no column '{(code < 0 ? list.Code : list.Meaning)}'. Its header reads: {string.Join(", ", names.All.Take(40))}.");
        }

        var meanings = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var doubtful = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        while (table.Reader.Read())
        {
            cancellation.ThrowIfCancellationRequested();
            string key = table.Reader.Row[code].Trim().ToString(), text = table.Reader.Row[meaning].Trim().ToString();
            if (table.Reader.Fault is null && !EmptyMark.Is(key) && !EmptyMark.Is(text) && !meanings.TryAdd(key, text) && meanings[key] != text)
            {
                doubtful.Add(key);
            }
        }

        foreach (string key in doubtful)
        {
            meanings.Remove(key);
        }

        return meanings;
    }
}
