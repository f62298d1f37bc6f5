using System.Collections.Concurrent;

namespace PartsSignal.Analysis.Trends;

/// <summary>A slow rise of one series, summed over the last year.</summary>
/// <param name="Key">The series.</param>
/// <param name="Month">Month in which the sum reached its limit.</param>
/// <param name="Since">Month in which the rise began.</param>
/// <param name="Total">The months since then together, held against a baseline that ends a year before.</param>
internal sealed record DriftTest(SeriesKey Key, int Month, int Since, SeriesTest Total)
{
    private const int Lattice = 2;
    private static readonly ConcurrentDictionary<(int Mean, double RunLength), (double Reference, double Limit)> Limits = new();

    /// <summary>
    /// Sums the last months against a baseline before them; null unless the sum first reaches its limit in this month.
    /// The usual mean is taken one standard error high, so that an uncertain baseline does not alarm by itself.
    /// </summary>
    public static DriftTest? Create(SeriesKey key, SeriesCounts counts, int month, MonthView view, TrendOptions options)
    {
        IReadOnlyList<(int Month, double Count, double Exposure)> before = Before(key, counts, month, view, options);
        double events = before.Sum(b => b.Count);
        double exposure = before.Sum(b => b.Exposure);
        if (before.Count < options.FewestBaselineMonths || exposure <= 0)
        {
            return null;
        }

        double shape = events + PredictiveTail.PriorShape;
        double rate = shape / exposure;
        double high = rate * (1 + 1 / Math.Sqrt(shape));

        // After an alarm the sum begins afresh.
        int[] months = [.. Enumerable.Range(0, options.DriftMonths).Select(i => month - i).TakeWhile(m => !view.Flagged.Contains((key, m))).Reverse()];
        if (months.Length < 2)
        {
            return null;
        }

        double[] exposures = [.. months.Select(m => view.Exposure(key, counts, m))];
        double mean = high * exposures.Average();
        if (mean < options.FewestExpected)
        {
            return null;
        }

        (double reference, double limit) = Limit(mean, options.DriftRunLength);
        double[] seen = [.. months.Select(m => (double)counts.Known(m, view.AsOf))];
        IReadOnlyList<double> sums = PoissonCusum.Path(seen, [.. exposures.Select(e => reference * e / exposures.Average())]);
        int last = sums.Count - 1;
        if (sums[last] < limit || sums[last - 1] >= limit)
        {
            return null;
        }

        int start = PoissonCusum.StartOfRise(sums, last);
        return TotalSince(key, counts, months[start], month, view, options) is { } total ? new DriftTest(key, month, months[start], total) : null;
    }

    /// <summary>The months since a rise began, together, or null if the baseline is too short.</summary>
    public static SeriesTest? TotalSince(SeriesKey key, SeriesCounts counts, int since, int month, MonthView view, TrendOptions options) =>
        SeriesTest.Over(key, counts, since, month, Before(key, counts, month, view, options), view, options);

    private static IReadOnlyList<(int Month, double Count, double Exposure)> Before(
        SeriesKey key, SeriesCounts counts, int month, MonthView view, TrendOptions options) =>
        view.Baseline(key, counts, month - options.DriftMonths + 1, options with { SkippedMonths = 0 });

    private static (double Reference, double Limit) Limit(double mean, double runLength)
    {
        // Limits are found once per step of 5 % in the mean, at the upper end of the step.
        int step = (int)Math.Ceiling(Math.Log(mean) / Math.Log(1.05));
        return Limits.GetOrAdd((step, runLength), static k =>
        {
            double usual = Math.Pow(1.05, k.Mean);
            double raised = usual * (usual < 4 ? 2 : 1.5);
            double reference = Math.Ceiling(PoissonCusum.Reference(usual, raised) * Lattice) / Lattice;
            return (reference, CusumRunLength.Limit(reference, usual, k.RunLength, Lattice));
        });
    }
}
