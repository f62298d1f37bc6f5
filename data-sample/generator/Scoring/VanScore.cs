using System.Globalization;
using System.IO.Compression;
using System.Text.Json.Nodes;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>What the plans of past quarters finish under the true demand, as a share of what a plan that knows this demand finishes.</summary>
internal static class VanScore
{
    /// <summary>The keys of <c>van</c> in the run record that need the truth; null where no plan can be compared.</summary>
    /// <param name="path">Path of <c>truth/demand.csv.gz</c>.</param>
    /// <param name="evidence">The plans of past quarters.</param>
    /// <param name="data">The shop they were made for.</param>
    /// <param name="options">How its vans were planned.</param>
    public static JsonObject Compute(string path, ReplayEvidence evidence, ShopData data, VanPlanOptions options)
    {
        IReadOnlyList<KnownDemandRow> rows = KnownDemand.Compare(
            evidence.Plans, WithNeighbors(Read(path)), data.NumbersOn(data.AsOf), new StockPartFacts(data), options);
        double best = rows.Sum(r => r.BestFinished);
        double? Share(double finished) => best > 0 ? Math.Round(finished / best, 6) : null;
        return new JsonObject
        {
            ["true_demand_attained"] = Share(rows.Sum(r => r.PlanFinished)),
            ["true_demand_attained_most_used"] = Share(rows.Sum(r => r.MostUsedFinished)),
        };
    }

    /// <summary>
    /// The true demand is itself a mean over a limited number of replicates, so a plan that knows one quarter of it would
    /// also know its luck: each quarter is averaged with the one before and the one after.
    /// </summary>
    private static List<TrueSet> WithNeighbors(List<TrueSet> sets) =>
        [.. sets
            .SelectMany(s => new[] { -1, 0, 1 }.Select(step => (Quarter: Shift(s.Quarter, step), Set: s)))
            .GroupBy(s => (s.Set.Van, s.Quarter, Parts: string.Join('+', s.Set.Parts)))
            .Select(g => g.First().Set with { Quarter = g.Key.Quarter, JobsPerQuarter = g.Sum(s => s.Set.JobsPerQuarter) / 3 })];

    private static string Shift(string quarter, int step)
    {
        int number = (int.Parse(quarter[..4], CultureInfo.InvariantCulture) * 4) + (quarter[5] - '1') + step;
        return string.Create(CultureInfo.InvariantCulture, $"{number / 4}Q{(number % 4) + 1}");
    }

    private static List<TrueSet> Read(string path)
    {
        using var file = new StreamReader(new GZipStream(File.OpenRead(path), CompressionMode.Decompress));
        var sets = new List<TrueSet>();
        file.ReadLine();
        while (file.ReadLine() is { } line)
        {
            string[] cells = line.Split(',');
            sets.Add(new TrueSet(cells[0], cells[1], [.. cells[2].Split('+').Select(Piece)], double.Parse(cells[3], CultureInfo.InvariantCulture)));
        }

        return sets;
    }

    private static (string, int) Piece(string text)
    {
        int at = text.LastIndexOf(" x", StringComparison.Ordinal);
        return at < 0 ? (text, 1) : (text[..at], int.Parse(text[(at + 2)..], CultureInfo.InvariantCulture));
    }
}
