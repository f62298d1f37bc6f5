using CsvHelper;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A line of a van's list.</summary>
/// <param name="Action">What to do: load, keep, or take off, as the plan wrote it.</param>
/// <param name="PartNumber">The part's current number.</param>
/// <param name="Label">The number on the piece, where it is an old one, or empty.</param>
/// <param name="Description">Its name.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Supplier">Who sells it, or empty.</param>
/// <param name="OtherVan">The van it goes to or comes from, or empty.</param>
internal sealed record VanLine(string Action, string PartNumber, string Label, string Description, string Quantity, string Supplier, string OtherVan)
{
    /// <summary>What to look for on the box.</summary>
    public string OnTheBox => Label.Length == 0 ? PartNumber : $"{Label} (now {PartNumber})";
}

/// <summary>What to do with one van, to print and tick off.</summary>
internal sealed record VanList(string Van, IReadOnlyList<VanLine> Lines)
{
    private const string Beginning = "pick-van-";

    /// <summary>The lists of the last run.</summary>
    /// <param name="folder">Folder of the van lists.</param>
    public static IReadOnlyList<VanList> All(string folder) => !Directory.Exists(folder) ? [] :
        [.. Directory.EnumerateFiles(folder, Beginning + "*.csv").Order(StringComparer.Ordinal).Select(Read)];

    // Lists of version 0.1.0 have no column of vans: there, the file's name tells it.
    private static VanList Read(string path)
    {
        bool namesVan = File.ReadLines(path).FirstOrDefault()?.StartsWith("van,", StringComparison.Ordinal) ?? false;
        IReadOnlyList<(string? Van, VanLine Line)> rows = ResultCsv.Read(path, csv => (namesVan ? csv.GetString("van") : null, Line(csv)));
        return new VanList(rows.Select(r => r.Van).FirstOrDefault(v => v is not null) ?? Path.GetFileNameWithoutExtension(path)[Beginning.Length..], [.. rows.Select(r => r.Line)]);
    }

    private static VanLine Line(CsvReader csv) => new(
        csv.GetString("action"), csv.GetString("part_number"), csv.GetString("label"), csv.GetString("description"), csv.GetString("quantity"), csv.GetString("supplier"), csv.GetString("other_van"));
}
