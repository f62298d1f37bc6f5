namespace PartsSignal.Analysis.Trends;

/// <summary>One series held against its baseline in one month.</summary>
/// <param name="Key">The series.</param>
/// <param name="Month">The month.</param>
/// <param name="Baseline">Events, exposure and scatter of the baseline.</param>
/// <param name="BaselineMonths">Months in it.</param>
/// <param name="Exposure">Exposure of the month: calls, times share known, times season.</param>
/// <param name="Completeness">Share of the month's cases known by its end.</param>
/// <param name="Expected">Cases expected to be known.</param>
/// <param name="Observed">Cases known.</param>
/// <param name="P">Mid-p of so many or more.</param>
internal sealed record SeriesTest(
    SeriesKey Key, int Month, Baseline Baseline, int BaselineMonths, double Exposure, double Completeness, double Expected, long Observed, double P)
{
    /// <summary>Observed over expected.</summary>
    public double Ratio => Observed / Expected;

    /// <summary>True when the series has enough to be looked at, and so counts among everything scanned.</summary>
    public bool Scanned(TrendOptions options) => Expected >= options.FewestExpected || Observed >= options.FewestSeen;

    /// <summary>Tests a month of a series as it was known at that month's end, or null if the baseline is too short.</summary>
    /// <param name="key">The series.</param>
    /// <param name="counts">Its counts, or what is left of them without some calls.</param>
    /// <param name="month">The month.</param>
    /// <param name="view">What was known of delays, seasons and flagged months then.</param>
    /// <param name="options">Settings.</param>
    public static SeriesTest? Create(SeriesKey key, SeriesCounts counts, int month, MonthView view, TrendOptions options) =>
        Over(key, counts, month, month, view.Baseline(key, counts, month, options), view, options);

    /// <summary>Tests the months from one to another together against given baseline months, or null if the baseline is too short.</summary>
    internal static SeriesTest? Over(
        SeriesKey key, SeriesCounts counts, int from, int to, IReadOnlyList<(int Month, double Count, double Exposure)> months, MonthView view, TrendOptions options)
    {
        double count = months.Sum(m => m.Count);
        double exposure = months.Sum(m => m.Exposure);
        double now = 0;
        long seen = 0;
        for (int month = from; month <= to; month++)
        {
            now += view.Exposure(key, counts, month);
            seen += counts.Known(month, view.AsOf);
        }

        if (months.Count < options.FewestBaselineMonths || exposure <= 0 || now <= 0)
        {
            return null;
        }

        double rate = (count + PredictiveTail.PriorShape) / exposure;
        double pearson = months.Sum(m => (m.Count - rate * m.Exposure) * (m.Count - rate * m.Exposure) / (rate * m.Exposure));
        var baseline = new Baseline(count, exposure, Math.Max(1, pearson / (months.Count - 1)));
        var tail = new PredictiveTail(baseline, now);
        return new SeriesTest(key, to, baseline, months.Count, now, view.Delays.Completeness(key, view.AsOf - to), tail.Expected, seen, tail.MidP(seen));
    }
}
