using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>A file that says by its name whose orders or prices it holds: "orders Haldorvane 2024.csv".</summary>
internal static class SupplierOfFile
{
    private const int FewestLetters = 4;

    /// <summary>Gives a table the supplier whom another table names, and this file's name too.</summary>
    public static void Complete(OpenMaps maps, int t)
    {
        SourceMap map = maps[t]!;
        if (map.Kind is not ("part_orders" or "parts" or "part_aliases") || map.Supplier is not null || map.Columns.ContainsKey("supplier"))
        {
            return;
        }

        IEnumerable<(string, string)> suppliers = maps.Others(t).SelectMany(o => (maps.Column(o, "supplier")?.Texts ?? []).Distinct(StringComparer.OrdinalIgnoreCase).Select(s => (s, maps.Sample(o).File)));
        if (Find(map, suppliers) is { } found)
        {
            maps[t] = map with { Supplier = found.Name };
            maps.Note(t, $"Supplier: {found.Name} for every row, since the file is named so and {found.KnownFrom} knows that name.");
        }
    }

    // The one supplier named by the file or its sheet and by another table, or null if there is none or more than one.
    private static (string Name, string KnownFrom)? Find(SourceMap map, IEnumerable<(string Name, string KnownFrom)> suppliers)
    {
        string file = Letters(map.Sheet is null ? map.Files : $"{map.Files} {map.Sheet}");
        (string Name, string KnownFrom)[] named = [.. suppliers
            .Where(s => Letters(s.Name) is { Length: >= FewestLetters } name && file.Contains(name, StringComparison.Ordinal))
            .DistinctBy(s => Letters(s.Name))];
        return named is [var one] ? one : null;
    }

    private static string Letters(string text) => string.Concat(PlainHeader.Words(text).Where(w => !char.IsAsciiDigit(w[0])));
}
