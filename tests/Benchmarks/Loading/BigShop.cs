using System.Globalization;
using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>
/// The sample shop's files with its job logs blown up to a country's: a log a year, the rows of one sample log again and
/// again, each a job, a day and a caller of its own. One job in five comes to an appliance that was there before.
/// </summary>
internal static class BigShop
{
    /// <summary>Jobs a van does in a year.</summary>
    public const int JobsPerVan = 1_600;

    private const string Log = "jobs-2023.csv";
    private const int LastYear = 2026;
    private static readonly DateOnly Last = new(LastYear, 9, 30);

    /// <summary>Names of the logs it writes.</summary>
    public const string Logs = "calls-*.csv*";

    /// <summary>Writes a shop to a folder, in place of what is there by the same names.</summary>
    /// <param name="folder">An existing folder.</param>
    /// <param name="rows">Jobs in all.</param>
    /// <param name="years">Years they are spread over, each a file, up to the sample's last.</param>
    /// <param name="packed">Packs the logs with gzip, at its fastest.</param>
    public static void Write(string folder, long rows, int years = 6, bool packed = false)
    {
        string sample = SampleFolder();
        JsonObject shop = JsonNode.Parse(File.ReadAllText(Path.Combine(sample, "shop.json")))!.AsObject();
        JsonArray sources = shop["sources"]!.AsArray();
        HashSet<string> logs = [.. sources.Where(IsLog).Select(s => (string)s!["files"]!)];
        JsonNode map = sources.First(s => (string?)s!["files"] == Log)!.DeepClone();
        map["files"] = Logs;
        shop["sources"] = new JsonArray([map, .. sources.Where(s => !IsLog(s)).Select(s => s!.DeepClone())]);
        shop["vans"] = new JsonArray();
        foreach (string file in Directory.EnumerateFiles(sample).Where(f => !logs.Contains(Path.GetFileName(f))))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)), overwrite: true);
        }

        File.WriteAllText(Path.Combine(folder, "shop.json"), shop.ToJsonString(new JsonSerializerOptions { WriteIndented = true }));
        var big = new BigLog(Path.Combine(sample, Log), Math.Max(3, rows / years / JobsPerVan), rows / years);
        long[] upTo = [.. Enumerable.Range(0, years + 1).Select(y => (long)((Int128)rows * y / years))];
        Parallel.For(0, years, y =>
        {
            int year = LastYear - years + 1 + y;
            DateOnly first = new(year, 1, 1);
            string path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"calls-{year}.csv"));
            using Stream file = packed
                ? new GZipStream(File.Create(path + ".gz", 1 << 20), CompressionLevel.Fastest)
                : File.Create(path, 1 << 20);
            big.Write(file, upTo[y], upTo[y + 1], first, year == LastYear ? Last : new DateOnly(year, 12, 31));
        });
    }

    private static bool IsLog(JsonNode? source) => (string?)source!["kind"] is "jobs" or "job_parts";

    private static string SampleFolder()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "PartsSignal.sln")))
        {
            at = at.Parent;
        }

        return Path.Combine(at?.FullName ?? throw new InvalidOperationException("The benchmarks run from within a checkout."), "data-sample");
    }
}
