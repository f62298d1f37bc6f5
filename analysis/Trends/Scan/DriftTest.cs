using System.Collections.Concurrent;
using PartsSignal.Analysis.Trends.Drift;
using PartsSignal.Analysis.Trends.Screening;

namespace PartsSignal.Analysis.Trends.Scan;

/// <summary>A slow rise of one series, summed over the last year.</summary>
/// <param name="Key">The series.</param>
/// <param name="Month">Month in which the sum reached its limit.</param>
/// <param name="Since">Month in which the rise began.</param>
/// <param name="Observed">Cases since then.</param>
/// <param name="Expected">Cases expected since then.</param>
/// <param name="Baseline">The baseline, which ends a year before.</param>
/// <param name="BaselineMonths">Months in it.</param>
public sealed record DriftTest(SeriesKey Key, int Month, int Since, long Observed, double Expected, Baseline Baseline, int BaselineMonths)
{
    private const int Lattice = 2;
    private static readonly ConcurrentDictionary<(int Mean, double RunLength), (double Reference, double Limit)> Limits = new();

    /// <summary>Observed over expected.</summary>
    public double Ratio => Observed / Expected;

    /// <summary>
    /// Sums the last months against a baseline before them; null unless the sum first reaches its limit in this month.
    /// The usual mean is taken one standard error high, so that an uncertain baseline does not alarm by itself.
    /// </summary>
    public static DriftTest? Of(SeriesKey key, SeriesCounts counts, int month, MonthView view, TrendOptions options)
    {
        int first = month - options.DriftMonths + 1;
        IReadOnlyList<(int Month, double Count, double Exposure)> before = view.Baseline(key, counts, first, options with { SkippedMonths = 0 });
        double events = before.Sum(b => b.Count);
        double exposure = before.Sum(b => b.Exposure);
        if (before.Count < options.FewestBaselineMonths || exposure <= 0)
        {
            return null;
        }

        double shape = events + PredictiveTail.PriorShape;
        double rate = shape / exposure;
        double high = rate * (1 + 1 / Math.Sqrt(shape));
        int[] months = [.. Enumerable.Range(first, options.DriftMonths)];
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
        return new DriftTest(
            key, month, months[start], (long)seen.Skip(start).Sum(), rate * exposures.Skip(start).Sum(), new Baseline(events, exposure), before.Count);
    }

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
