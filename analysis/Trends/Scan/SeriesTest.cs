using PartsSignal.Analysis.Trends.Screening;

namespace PartsSignal.Analysis.Trends.Scan;

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
public sealed record SeriesTest(
    SeriesKey Key, int Month, Baseline Baseline, int BaselineMonths, double Exposure, double Completeness, double Expected, long Observed, double P)
{
    /// <summary>Observed over expected.</summary>
    public double Ratio => Observed / Expected;

    /// <summary>True when the series has enough to be looked at, and so counts among everything scanned.</summary>
    public bool Scanned(TrendOptions options) => Expected >= options.FewestExpected || Observed >= options.FewestSeen;

    /// <summary>Tests the counts of a series as they were known at the end of a month; null: too short a baseline.</summary>
    /// <param name="key">The series.</param>
    /// <param name="counts">Its counts, or what is left of them without some calls.</param>
    /// <param name="month">The month.</param>
    /// <param name="view">What was known of delays, seasons and flagged months then.</param>
    /// <param name="options">Settings.</param>
    public static SeriesTest? Of(SeriesKey key, SeriesCounts counts, int month, MonthView view, TrendOptions options)
    {
        double count = 0;
        double exposure = 0;
        IReadOnlyList<(int Month, double Count, double Exposure)> months = view.Baseline(key, counts, month, options);
        foreach ((_, double c, double e) in months)
        {
            count += c;
            exposure += e;
        }

        if (months.Count < options.FewestBaselineMonths || exposure <= 0)
        {
            return null;
        }

        double rate = (count + PredictiveTail.PriorShape) / exposure;
        double pearson = months.Sum(m => (m.Count - rate * m.Exposure) * (m.Count - rate * m.Exposure) / (rate * m.Exposure));
        var baseline = new Baseline(count, exposure, Math.Max(1, pearson / (months.Count - 1)));
        double now = view.Exposure(key, counts, month);
        long seen = counts.Known(month, view.AsOf);
        if (now <= 0)
        {
            return null;
        }

        var tail = new PredictiveTail(baseline, now);
        return new SeriesTest(key, month, baseline, months.Count, now, view.Delays.Completeness(key, view.AsOf - month), tail.Expected, seen, tail.MidP(seen));
    }
}
