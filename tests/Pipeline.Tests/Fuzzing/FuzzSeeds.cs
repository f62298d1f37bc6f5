using System.IO.Compression;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Tests.Reading;
using static PartsSignal.Pipeline.Tests.Reading.WorkbookMaker;

namespace PartsSignal.Pipeline.Tests.Fuzzing;

/// <summary>A whole file to start from, with its map.</summary>
internal sealed record FuzzSeed(string Name, byte[] Bytes, SourceMap Map)
{
    private const int SampleBytes = 4_000;

    private static readonly SourceMap Orders = new()
    {
        Files = "orders",
        Kind = "part_orders",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["order_id"] = ["Order"], ["ordered_on"] = ["Ordered"], ["part"] = ["Part"], ["unit_cost"] = ["Cost"] },
    };

    /// <summary>The start of every sample file, one of them packed both ways, and a workbook of each form.</summary>
    public static IReadOnlyList<FuzzSeed> All { get; } = [.. Samples(), .. Workbooks()];

    private static IEnumerable<FuzzSeed> Samples()
    {
        foreach (SourceMap map in ShopFile.Load(RepositoryFolder.SampleShop).Sources)
        {
            byte[] all = File.ReadAllBytes(Path.Combine(RepositoryFolder.SampleShop, map.Files));
            byte[] start = all[..Math.Min(all.Length, SampleBytes)];
            yield return new FuzzSeed(map.Files, start, map);
            if (map.Files == "superseded.csv")
            {
                yield return new FuzzSeed("superseded.csv.gz", Gzip(start), map with { Files = "superseded.csv.gz" });
                yield return new FuzzSeed("old.zip", Zip(start), map with { Files = "old.zip/superseded.csv" });
            }
        }
    }

    private static IEnumerable<FuzzSeed> Workbooks()
    {
        string[] header = [Text("Order"), Text("Ordered"), Text("Part"), Text("Cost")];
        string[][] rows = [.. Enumerable.Range(1, 12).Select(i => new[] { Text($"{i}"), Number($"{45_000 + i}", 1), Text($"P{i}"), Number("4.5") })];
        yield return new FuzzSeed("orders.xlsx", Make([header, .. rows]), Orders with { Files = "orders.xlsx" });
        XlsMaker old = new XlsMaker().AddSheet("Orders").Text(0, 0, "Order").Text(0, 1, "Ordered").Text(0, 2, "Part").Text(0, 3, "Cost");
        for (int i = 1; i <= 12; i++)
        {
            old.Text(i, 0, $"{i}").Number(i, 1, 45_000 + i, date: true).Text(i, 2, $"P{i}").Formula(i, 3, 4.5);
        }

        yield return new FuzzSeed("orders.xls", old.Make(), Orders with { Files = "orders.xls" });
    }

    private static byte[] Gzip(byte[] bytes)
    {
        using var stream = new MemoryStream();
        using (var gzip = new GZipStream(stream, CompressionLevel.Optimal))
        {
            gzip.Write(bytes);
        }

        return stream.ToArray();
    }

    private static byte[] Zip(byte[] bytes)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create))
        {
            using Stream entry = zip.CreateEntry("superseded.csv").Open();
            entry.Write(bytes);
        }

        return stream.ToArray();
    }
}
