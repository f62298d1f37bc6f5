using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Analysis.Trends.Drift;
using PartsSignal.Analysis.Trends.Screening;

namespace PartsSignal.Analysis.Trends.Scan;

/// <summary>Puts together what an alarm's reader needs.</summary>
internal sealed class AlarmWriter(CallBook book, MonthView view, TrendOptions options)
{
    private const int LongestRise = 12;

    /// <summary>The record of a month that rose, and the jobs behind it.</summary>
    public (TrendAlarm Alarm, IReadOnlyList<TrendAlarmJob> Jobs) OfMonth(SeriesTest test, double q, SeriesKey? partOf)
    {
        (int since, double certainty) = Since(test);
        return Write(TrendAlarm.OfMonth, test, test.Observed, test.Expected, test.P, q, since, certainty, test.Month, partOf);
    }

    /// <summary>The record of a slow rise, and the jobs behind it; null when the month itself cannot be tested.</summary>
    public (TrendAlarm Alarm, IReadOnlyList<TrendAlarmJob> Jobs)? OfDrift(DriftTest drift, SeriesKey? partOf) =>
        SeriesTest.Of(drift.Key, book.Counts(drift.Key), drift.Month, view, options) is { } month
            ? Write(TrendAlarm.OfDrift, month with { Baseline = drift.Baseline, BaselineMonths = drift.BaselineMonths }, drift.Observed, drift.Expected, null, null, drift.Since, null, drift.Since, partOf)
            : null;

    private (TrendAlarm, IReadOnlyList<TrendAlarmJob>) Write(
        string kind, SeriesTest test, long observed, double expected, double? p, double? q, int since, double? certainty, int from, SeriesKey? partOf)
    {
        SeriesKey key = test.Key;
        IReadOnlyList<TrendCall> cases = book.Cases(key, from, test.Month, view.AsOf);
        double exposure = expected * test.Baseline.Exposure / (test.Baseline.Events + PredictiveTail.PriorShape);
        Estimate ratio = RateRatio.Exact(observed, exposure, (long)test.Baseline.Events, test.Baseline.Exposure).Ratio;
        double value = observed / expected;
        Removal customer = Composition.Without(book, test, view, c => c.Customer, options);
        Removal technician = Composition.Without(book, test, view, c => c.Technician, options);
        Removal model = Composition.Without(book, test, view, c => c.Model, options);
        BuildWindow? built = Built(key, since, test.Month);
        long alarmCount = Math.Max(options.Gate.Count, new PredictiveTail(test.Baseline, test.Exposure).Limit(options.DetectableAlpha));
        DateOnly month = TrendMonth.Day(test.Month);
        var alarm = new TrendAlarm(
            month, kind, key.ApplianceType, key.Component, key.ModelFamily,
            test.BaselineMonths, test.Baseline.Events, 100 * test.Baseline.Events / test.Baseline.Exposure,
            expected, observed, value,
            ratio.Lower is { } lower ? Math.Min(lower, value) : null, ratio.Upper is { } upper ? Math.Max(upper, value) : null,
            test.Completeness, p, q, kind == TrendAlarm.OfDrift ? options.DriftRunLength : null,
            TrendMonth.Day(since), certainty, alarmCount, new AlarmLimit(alarmCount, 0).DetectableRatio(test.Expected),
            customer.Cases, customer.Survives, technician.Largest, technician.Survives, model.Largest, model.Survives,
            built is null ? null : TrendMonth.Day(built.From), built is null ? null : TrendMonth.Day(built.To), built?.Cases, built?.Known,
            partOf is null ? null : $"{partOf.ApplianceType} / {partOf.Component} / {partOf.ModelFamily}", cases.Count);
        return (alarm, [.. cases.Select(c => new TrendAlarmJob(month, kind, key.ApplianceType, key.Component, key.ModelFamily, c.JobId))]);
    }

    private (int Month, double Certainty) Since(SeriesTest test)
    {
        SeriesCounts counts = book.Counts(test.Key);
        (int Month, double Count, double Exposure)[] months =
            [.. Enumerable.Range(counts.First, test.Month - counts.First + 1)
                .Where(m => m > test.Month - options.BaselineMonths - options.SkippedMonths)
                .Select(m => (m, (double)counts.Known(m, view.AsOf), view.Exposure(test.Key, counts, m)))
                .Where(m => m.Item3 > 0)];
        double mean = months.Sum(m => m.Exposure) / months.Length;
        ChangePoint? change = ChangePoint.Find([.. months.Select(m => (m.Count, m.Exposure / mean))]);
        return change is { } c && c.RateAfter > c.RateBefore ? (months[c.LastBefore + 1].Month, c.LogBayesFactor) : (test.Month, change?.LogBayesFactor ?? 0);
    }

    private BuildWindow? Built(SeriesKey key, int since, int month)
    {
        int from = Math.Max(since, month - LongestRise + 1);
        IReadOnlyList<TrendCall> cases = book.Cases(key, from, month, view.AsOf);
        HashSet<string> own = [.. cases.Select(c => c.JobId)];
        return BuildWindow.Find(
            [.. cases.Where(c => c.MadeMonth is not null).Select(c => c.MadeMonth!.Value)],
            [.. book.Group(key).Where(c => c.Month >= from - LongestRise && c.Month <= month && c.MadeMonth is not null && !own.Contains(c.JobId)).Select(c => c.MadeMonth!.Value)]);
    }
}
