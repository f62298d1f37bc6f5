using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Van counts with a column for each van or for each month: such a file is read once for each of them, so that its columns
/// become rows. Its books stand once for each too.
/// </summary>
internal static class WideCounts
{
    /// <summary>The settings with a map for each van or month where one map names several columns of pieces on hand.</summary>
    public static ShopSettings Apply(ShopSettings settings) => settings with
    {
        Sources = [.. settings.Sources.SelectMany(m => IsByMonth(m) ? Months(m) : IsByVan(m) ? Divided(m, settings.Vans) : [m])],
    };

    private static bool IsByVan(SourceMap map) => IsWide(map) && !Gives(map, "van");

    private static bool IsByMonth(SourceMap map) => IsWide(map) && !Gives(map, "counted_on") && MonthHeaders.AreMonths(map.Columns["on_hand"]);

    private static bool IsWide(SourceMap map) =>
        map.Kind == "van_counts" && map.Columns.TryGetValue("on_hand", out IReadOnlyList<string>? counts) && counts.Count > 1;

    private static bool Gives(SourceMap map, string field) => map.Columns.ContainsKey(field) || map.Fixed.ContainsKey(field);

    // The first day, since the last may be still to come. A blank cell was not counted: its row is refused.
    private static IEnumerable<SourceMap> Months(SourceMap map) => map.Columns["on_hand"].Select(header => map with
    {
        Columns = new Dictionary<string, IReadOnlyList<string>>(map.Columns) { ["on_hand"] = [header] },
        Fixed = new Dictionary<string, string>(map.Fixed) { ["counted_on"] = MonthHeaders.Read(header)!.Value.FirstDay.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) },
    });

    private static IEnumerable<SourceMap> Divided(SourceMap map, IReadOnlyList<ShopVan> vans) => map.Columns["on_hand"].Select(header => map with
    {
        Columns = new Dictionary<string, IReadOnlyList<string>>(map.Columns) { ["on_hand"] = [header] },

        // A part that a van does not carry is left blank.
        Fixed = new Dictionary<string, string>(map.Fixed) { ["van"] = NameOf(header, map, vans), ["on_hand"] = "0" },
        Words = map.Words.Where(w => w.Key != "van").ToDictionary(w => w.Key, w => w.Value, StringComparer.Ordinal),
    });

    // What the map says, else the van of shop.json whose name ends the header, else the header.
    private static string NameOf(string header, SourceMap map, IReadOnlyList<ShopVan> vans) =>
        map.Words.TryGetValue("van", out IReadOnlyDictionary<string, string>? words) && words.TryGetValue(header, out string? said) ? said
        : vans.FirstOrDefault(v => header.EndsWith(" " + v.Van, StringComparison.OrdinalIgnoreCase))?.Van ?? header;
}
