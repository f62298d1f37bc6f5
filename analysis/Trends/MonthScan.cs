using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Trends;

/// <summary>A test with its q.</summary>
internal sealed record ScannedTest(SeriesTest Test, double Q);

/// <summary>Everything looked at in one month, and what rose.</summary>
/// <param name="View">What was known then.</param>
/// <param name="Tests">Every series with enough to be looked at.</param>
/// <param name="Risen">Those that passed.</param>
/// <param name="Rejected">Those whose q is small enough, the effect gate left aside.</param>
/// <param name="Drifts">Slow rises that reached their limit in this month.</param>
/// <param name="Summed">Series in which slow rises were looked for.</param>
internal sealed record MonthScan(
    MonthView View, IReadOnlyList<ScannedTest> Tests, IReadOnlyList<ScannedTest> Risen, IReadOnlySet<SeriesKey> Rejected,
    IReadOnlyList<DriftTest> Drifts, int Summed)
{
    /// <summary>
    /// The chance that a series had to reach: Benjamini and Hochberg ask the r-th smallest of m chances to be at most
    /// q r / m. The r rejected series count whether or not they pass the effect gate; any other would be one more.
    /// </summary>
    /// <param name="key">The series.</param>
    /// <param name="options">Settings.</param>
    public double AskedFor(SeriesKey key, TrendOptions options) =>
        Math.Min(1, options.Gate.Q * (Rejected.Count + (Rejected.Contains(key) ? 0 : 1)) / Math.Max(1, Tests.Count));

    /// <summary>
    /// Tests every series of a month; false discoveries held by Benjamini and Hochberg (1995) on mid-p over all of them,
    /// then the effect gate.
    /// </summary>
    public static MonthScan Create(CallTable table, MonthView view, TrendOptions options)
    {
        SeriesTest[] tests = [.. table.Keys
            .Select(k => SeriesTest.Create(k, table.Counts(k), view.AsOf, view, options))
            .OfType<SeriesTest>().Where(t => t.Scanned(options))];
        IReadOnlyList<double> q = PValues.BenjaminiHochberg([.. tests.Select(t => t.P)]);
        ScannedTest[] scanned = [.. tests.Select((t, i) => new ScannedTest(t, q[i]))];
        ScannedTest[] risen = [.. scanned.Where(s => options.Gate.Passes(s.Q, s.Test.Ratio, s.Test.Observed))];
        HashSet<SeriesKey> rejected = [.. scanned.Where(s => s.Q <= options.Gate.Q).Select(s => s.Test.Key)];
        HashSet<SeriesKey> already = [.. risen.Select(r => r.Test.Key)];
        SeriesTest[] summed = [.. tests.Where(t => t.Expected >= options.FewestExpected)];
        DriftTest[] drifts = [.. summed.Where(t => !already.Contains(t.Key))
            .Select(t => DriftTest.Create(t.Key, table.Counts(t.Key), view.AsOf, view, options))
            .OfType<DriftTest>().Where(d => options.Gate.Passes(0, d.Total.Ratio, d.Total.Observed))];
        return new MonthScan(view, scanned, risen, rejected, drifts, summed.Length);
    }
}
