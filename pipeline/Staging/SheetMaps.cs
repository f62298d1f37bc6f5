using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// A map that names a workbook but no sheet reads every shown sheet that has the columns a table of its kind needs, each as a
/// source with its own books: the months or years of one log often stand on sheets of their own.
/// </summary>
/// <param name="Settings">The settings with a map for each such sheet where there are several.</param>
/// <param name="Notes">Which shown sheets are not read, and which are read without a column of the map; a sentence each.</param>
internal sealed record SheetMaps(ShopSettings Settings, IReadOnlyList<string> Notes)
{
    /// <summary>Looks at the sheets of the workbooks that a map without a sheet names.</summary>
    /// <param name="folder">Folder of the shop's files.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="cancellation">Stops.</param>
    public static SheetMaps Apply(string folder, ShopSettings settings, CancellationToken cancellation)
    {
        if (settings.Sources.All(m => m.Sheet is not null))
        {
            return new SheetMaps(settings, []);
        }

        var files = new InputFiles(folder, settings.Limits);
        HashSet<(string Key, string Kind)> mapped = [.. settings.Sources.Where(m => m.Sheet is not null).SelectMany(m => files.Find(m.Files).Select(f => (SheetLook.KeyOf(f.Name, m.Sheet!), m.Kind)))];
        var looked = new List<SheetLook>();
        SourceMap[] sources = [.. settings.Sources.SelectMany(m => m.Sheet is null ? Divided(m) : [m])];
        HashSet<string> read = [.. mapped.Select(m => m.Key), .. looked.Where(l => l.Map is not null).Select(l => l.Key)];
        return new SheetMaps(settings with { Sources = sources }, [.. Incomplete(looked), .. Unread(looked.Where(l => !l.IsBlank && !read.Contains(l.Key)))]);

        IReadOnlyList<SourceMap> Divided(SourceMap map)
        {
            IReadOnlyList<InputFile> found = files.Find(map.Files);

            // The name of a file that holds a wildcard would be a pattern, and name other files too.
            SourceMap[][] divided = found.Any(f => f.Name.AsSpan().ContainsAny('*', '?')) ? [] : [.. found.Select(f => Sheets(f, map))];
            return divided.All(d => d.Length == 0) ? [map]
                : [.. divided.SelectMany((sheets, i) => sheets.Length == 0 ? [map with { Files = found[i].Name }] : sheets)];
        }

        SourceMap[] Sheets(InputFile file, SourceMap map)
        {
            SheetLook[] sheets = [.. SheetLook.At(file, map, settings.Limits, cancellation).Where(s => !mapped.Contains((s.Key, map.Kind)))];
            looked.AddRange(sheets);
            SheetLook[] fits = [.. sheets.Where(s => s.Map is not null)];

            // A column that stands on none of them is misspelled in the map: the load says so, as it does of any other file.
            return fits.Length > 0 && fits[0].Missing.Any(m => fits.All(s => s.Missing.Contains(m))) ? [map with { Files = file.Name, Sheet = fits[0].Sheet }]
                : [.. fits.Select((s, i) => s.Map! with { Files = file.Name, IsFurtherSheet = i > 0 })];
        }
    }

    private static IEnumerable<string> Incomplete(IEnumerable<SheetLook> looked) => looked.Where(l => l.Map is not null && l.Missing.Count > 0).Select(l =>
        $"{l.Place}, has no {(l.Missing.Count == 1 ? "column" : "columns")} {string.Join(", ", l.Missing.Select(m => $"'{m}'"))} and was read without {(l.Missing.Count == 1 ? "it" : "them")}.");

    private static IEnumerable<string> Unread(IEnumerable<SheetLook> unread)
    {
        string[] names = [.. unread.Select(l => l.Place).Distinct(StringComparer.Ordinal)];
        return names.Length switch
        {
            0 => [],
            1 => [$"Not read, since it lacks columns of its map: {names[0]}. If it holds data of yours, give it a map of its own in shop.json."],
            _ => [$"Not read, since they lack columns of their map: {string.Join("; ", names)}. If they hold data of yours, give each a map of its own in shop.json."],
        };
    }
}
