using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A line of a van's list.</summary>
/// <param name="Action">What to do: load, keep, or take off, as the plan wrote it.</param>
/// <param name="PartNumber">The part.</param>
/// <param name="Description">Its name.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Supplier">Who sells it, or empty.</param>
/// <param name="OtherVan">The van it goes to or comes from, or empty.</param>
internal sealed record VanLine(string Action, string PartNumber, string Description, string Quantity, string Supplier, string OtherVan);

/// <summary>What to do with one van, to print and tick off.</summary>
internal sealed record VanList(string Van, IReadOnlyList<VanLine> Lines)
{
    private const string Beginning = "pick-van-";

    /// <summary>The lists of the last run.</summary>
    /// <param name="folder">Folder of the van lists.</param>
    public static IReadOnlyList<VanList> All(string folder) => !Directory.Exists(folder) ? [] :
        [.. Directory.EnumerateFiles(folder, Beginning + "*.csv").Order(StringComparer.Ordinal).Select(f => new VanList(Path.GetFileNameWithoutExtension(f)[Beginning.Length..], Read(f)))];

    private static IReadOnlyList<VanLine> Read(string path) => ResultCsv.Read(path, csv => new VanLine(
        csv.GetString("action"), csv.GetString("part_number"), csv.GetString("description"), csv.GetString("quantity"), csv.GetString("supplier"), csv.GetString("other_van")));
}
