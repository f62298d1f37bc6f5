using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// A map that names a workbook but no sheet reads every shown sheet that has the map's columns, each as a source with its
/// own books: the months or years of one log often stand on sheets of their own.
/// </summary>
internal static class SheetMaps
{
    /// <summary>The settings with a map for each such sheet where there are several.</summary>
    /// <param name="folder">Folder of the shop's files.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="cancellation">Stops.</param>
    public static ShopSettings Apply(string folder, ShopSettings settings, CancellationToken cancellation)
    {
        if (settings.Sources.All(m => m.Sheet is not null))
        {
            return settings;
        }

        var files = new InputFiles(folder, settings.Limits);
        return settings with { Sources = [.. settings.Sources.SelectMany(m => m.Sheet is null ? Divided(files, m, settings.Limits, cancellation) : [m])] };
    }

    private static IEnumerable<SourceMap> Divided(InputFiles files, SourceMap map, ReadingLimits limits, CancellationToken cancellation)
    {
        (InputFile File, IReadOnlyList<string> Sheets)[] found;
        try
        {
            found = [.. files.Find(map.Files).Select(f => (f, f.IsWorkbook && !f.Name.AsSpan().ContainsAny('*', '?') ? Sheets(f, map, limits, cancellation) : []))];
        }
        catch (BadInputException)
        {
            // The load itself says what is wrong with the file.
            return [map];
        }

        return found.All(f => f.Sheets.Count < 2) ? [map]
            : found.SelectMany(f => f.Sheets.Count < 2 ? [map with { Files = f.File.Name }] : f.Sheets.Select(s => map with { Files = f.File.Name, Sheet = s }));
    }

    private static IReadOnlyList<string> Sheets(InputFile file, SourceMap map, ReadingLimits limits, CancellationToken cancellation)
    {
        var scan = ContentScan.Read(file, limits, cancellation);
        IReadOnlyList<string> all = Workbooks.Sheets(file, scan, limits);
        return all.Count < 2 ? all : [.. all.Where(s => HasColumns(file, scan, map with { Sheet = s }, limits))];
    }

    private static bool HasColumns(InputFile file, ContentScan scan, SourceMap map, ReadingLimits limits)
    {
        try
        {
            using OpenedTable table = OpenedTable.Open(file, scan, map, limits);
            var names = new ColumnNames(table.Header);
            return map.Columns.Values.SelectMany(c => c).Concat(map.PartGroups.SelectMany(g => g.Values)).All(h => names.Find(h) >= 0);
        }
        catch (BadInputException)
        {
            return false;
        }
    }
}
