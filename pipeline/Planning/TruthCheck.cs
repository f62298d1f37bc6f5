using System.Globalization;
using System.IO.Compression;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Data;
using PartsSignal.Analysis.VanPlan.Evidence;

namespace PartsSignal.Pipeline.Planning;

/// <summary>How near the plans of past quarters come to plans that know the sample's true demand.</summary>
/// <param name="Attained">Mean share attained of what the plan that knows finishes beyond an empty van, 0 to 1 or a little above.</param>
/// <param name="MostUsedAttained">The same for most used first.</param>
/// <param name="Plans">Vans times quarters compared.</param>
internal sealed record TruthCheck(double Attained, double MostUsedAttained, int Plans)
{
    private static string PathIn(string input) => Path.Combine(input, "truth", "demand.csv.gz");

    /// <summary>Compares; null where the input has no truth beside it (any shop but the sample).</summary>
    public static TruthCheck? Create(string input, ReplayEvidence evidence, ShopData data, ShopViews views, VanPlanOptions options)
    {
        if (!File.Exists(PathIn(input)))
        {
            return null;
        }

        IReadOnlyList<TrueSet> sets = WithNeighbours(Read(PathIn(input)));
        IReadOnlyList<KnownDemandRow> rows = KnownDemand.Compare(evidence.Plans, sets, data.NumbersOn(data.AsOf), views.Facts, options);
        double best = rows.Sum(r => r.BestFinished);
        return best > 0 ? new TruthCheck(rows.Sum(r => r.PlanFinished) / best, rows.Sum(r => r.MostUsedFinished) / best, rows.Count) : null;
    }

    /// <summary>
    /// The truth is itself a mean over a limited number of lives, so a plan that knows one quarter of it knows its luck too:
    /// each quarter is taken with the one before and the one after.
    /// </summary>
    private static List<TrueSet> WithNeighbours(List<TrueSet> sets) =>
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
