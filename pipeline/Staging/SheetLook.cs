using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>How a map that names no sheet suits one shown sheet of a workbook.</summary>
/// <param name="File">Name of the workbook.</param>
/// <param name="Sheet">Name of the sheet.</param>
/// <param name="Map">The map for this sheet, without the columns that it lacks; null if the sheet is not read.</param>
/// <param name="Missing">Headers of the map that the sheet lacks.</param>
/// <param name="IsBlank">True for a sheet without any cell.</param>
internal sealed record SheetLook(string File, string Sheet, SourceMap? Map, IReadOnlyList<string> Missing, bool IsBlank)
{
    /// <summary>The sheet for people.</summary>
    public string Place => TablePlace.Of(File, Sheet);

    /// <summary>Tells the sheet from all others.</summary>
    public string Key => KeyOf(File, Sheet);

    /// <summary>Tells a sheet from all others, whatever the case of its name.</summary>
    /// <param name="file">Name of the workbook.</param>
    /// <param name="sheet">Name of the sheet.</param>
    public static string KeyOf(string file, string sheet) => $"{file}\n{sheet.ToUpperInvariant()}";

    /// <summary>The shown sheets of a workbook; none where there is only one, and where the workbook cannot be read: the load says why.</summary>
    /// <param name="file">The file.</param>
    /// <param name="map">A map without a sheet.</param>
    /// <param name="limits">Limits of reading.</param>
    /// <param name="cancellation">Stops.</param>
    public static IReadOnlyList<SheetLook> At(InputFile file, SourceMap map, ReadingLimits limits, CancellationToken cancellation)
    {
        if (!file.IsWorkbook)
        {
            return [];
        }

        try
        {
            var scan = ContentScan.Read(file, limits, cancellation);
            Workbook workbook = Workbooks.Read(file, scan, limits);
            IReadOnlyList<string> all = workbook.Sheets();
            return all.Count < 2 ? [] : [.. all.Select(s => At(file, scan, map with { Sheet = s }, limits, workbook))];
        }
        catch (BadInputException)
        {
            return [];
        }
    }

    private static SheetLook At(InputFile file, ContentScan scan, SourceMap map, ReadingLimits limits, Workbook workbook)
    {
        try
        {
            using OpenedTable table = OpenedTable.Open(file, scan, map, limits, workbook);
            var names = new ColumnNames(table.Header);
            string[] wanted = [.. Headers(map).Distinct(StringComparer.Ordinal)];
            string[] missing = [.. wanted.Where(h => names.Find(h) < 0)];
            SourceMap without = Without(map, missing);

            // A sheet with fewer than half the columns is another table: a list of open jobs, say, beside the log.
            return new SheetLook(file.Name, map.Sheet!, missing.Length * 2 <= wanted.Length && HasNeeded(map, without) ? without : null, missing, IsBlank: false);
        }
        catch (BadInputException bad)
        {
            return new SheetLook(file.Name, map.Sheet!, null, [], bad is FileRefusedException { Fault.Code: ReasonCode.EmptyFile });
        }
    }

    private static IEnumerable<string> Headers(SourceMap map) => map.Columns.Values.SelectMany(c => c).Concat(map.PartGroups.SelectMany(g => g.Values));

    // A field that is joined of several columns is given by all of them or not at all.
    private static SourceMap Without(SourceMap map, string[] missing) => missing.Length == 0 ? map : map with
    {
        Columns = map.Columns.Where(c => !c.Value.Any(missing.Contains)).ToDictionary(c => c.Key, c => c.Value, StringComparer.Ordinal),
        PartGroups = [.. map.PartGroups
            .Select(g => g.Where(c => !missing.Contains(c.Value)).ToDictionary(c => c.Key, c => c.Value, StringComparer.Ordinal))
            .Where(g => g.ContainsKey("part") || g.ContainsKey("description"))],
    };

    // What the whole map cannot give, its sheets need not give either.
    private static bool HasNeeded(SourceMap whole, SourceMap part)
    {
        IEnumerable<string[]> needs = FieldCatalog.Of(whole.Kind).Where(f => f.Essential).Select(f => new[] { f.Name }).Concat(FieldCatalog.Needs(whole.Kind));
        return needs.All(group => !group.Any(f => Gives(whole, f)) || group.Any(f => Gives(part, f)));
    }

    private static bool Gives(SourceMap map, string field) => map.Columns.ContainsKey(field) || map.PartGroups.Any(g => g.ContainsKey(field));
}
