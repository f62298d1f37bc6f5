using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Van counts with a column for each van: such a file is read once for each van, so that its columns become rows. Its books
/// stand once for each van too.
/// </summary>
internal static class WideCounts
{
    /// <summary>The settings with a map for each van where one map names several columns of pieces on hand.</summary>
    public static ShopSettings Apply(ShopSettings settings) => settings.Sources.Any(IsWide)
        ? settings with { Sources = [.. settings.Sources.SelectMany(m => IsWide(m) ? Divided(m, settings.Vans) : [m])] }
        : settings;

    private static bool IsWide(SourceMap map) =>
        map.Kind == "van_counts" && !map.Columns.ContainsKey("van") && !map.Fixed.ContainsKey("van")
        && map.Columns.TryGetValue("on_hand", out IReadOnlyList<string>? vans) && vans.Count > 1;

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
