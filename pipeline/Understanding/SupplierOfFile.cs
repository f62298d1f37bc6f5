using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>A file that says by its name whose orders or prices it holds: "orders Haldorvane 2024.csv".</summary>
internal static class SupplierOfFile
{
    private const int FewestLetters = 4;

    /// <summary>The one supplier named by the file or its sheet and by another table, or null if there is none or more than one.</summary>
    /// <param name="map">How the file is read.</param>
    /// <param name="suppliers">Suppliers of the other tables, each with the file that names it.</param>
    public static (string Name, string KnownFrom)? Find(SourceMap map, IEnumerable<(string Name, string KnownFrom)> suppliers)
    {
        string file = Letters(map.Sheet is null ? map.Files : $"{map.Files} {map.Sheet}");
        (string Name, string KnownFrom)[] named = [.. suppliers
            .Where(s => Letters(s.Name) is { Length: >= FewestLetters } name && file.Contains(name, StringComparison.Ordinal))
            .DistinctBy(s => Letters(s.Name))];
        return named is [var one] ? one : null;
    }

    private static string Letters(string text) => string.Concat(PlainHeader.Words(text).Where(w => !char.IsAsciiDigit(w[0])));
}
