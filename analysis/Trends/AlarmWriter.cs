using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>Puts together what an alarm's reader needs.</summary>
internal sealed class AlarmWriter(CallTable table, MonthScan scan, TrendOptions options)
{
    private const int LongestRise = 12;
    private readonly MonthView _view = scan.View;

    /// <summary>The record of a month that rose, and the jobs behind it.</summary>
    public (TrendAlarm Alarm, IReadOnlyList<TrendAlarmJob> Jobs) OfMonth(SeriesTest test, double q, SeriesKey? partOf)
    {
        (int since, double certainty) = Since(test);
        return Write(
            TrendAlarm.OfMonth, test, q, since, certainty, table.Cases(test.Key, test.Month, test.Month, _view.AsOf),
            left => SeriesTest.Create(test.Key, left, test.Month, _view, options), partOf);
    }

    /// <summary>The record of a slow rise, and the jobs behind it.</summary>
    public (TrendAlarm Alarm, IReadOnlyList<TrendAlarmJob> Jobs) OfDrift(DriftTest drift, SeriesKey? partOf) => Write(
        TrendAlarm.OfDrift, drift.Total, null, drift.Since, null, table.Cases(drift.Key, drift.Since, drift.Month, _view.AsOf),
        left => DriftTest.TotalSince(drift.Key, left, drift.Since, drift.Month, _view, options), partOf);

    private (TrendAlarm, IReadOnlyList<TrendAlarmJob>) Write(
        string kind, SeriesTest test, double? q, int since, double? certainty, IReadOnlyList<TrendCall> cases, Func<SeriesCounts, SeriesTest?> again, SeriesKey? partOf)
    {
        SeriesKey key = test.Key;
        bool drift = kind == TrendAlarm.OfDrift;
        double askedFor = scan.AskedFor(key, options);
        long alarmCount = AlarmLimit.Of(test, askedFor, options);
        Removal customer = LeaveOneOut.Without(table, key, cases, c => c.Customer, again, options.Gate);
        Removal technician = LeaveOneOut.Without(table, key, cases, c => c.Technician, again, options.Gate);
        Removal model = LeaveOneOut.Without(table, key, cases, c => c.Model, again, options.Gate);
        BuildWindow? built = Built(key, since, test.Month);
        DateOnly month = TrendMonth.Day(test.Month);
        var alarm = new TrendAlarm(
            month, kind, key.ApplianceType, key.Component, key.ModelFamily,
            test.BaselineMonths, test.Baseline.Events, 100 * test.Baseline.Events / test.Baseline.Exposure,
            test.Expected, test.Observed, test.Ratio,
            // A slow rise starts where the data show it best; the bound does not allow for that choice.
            drift ? null : SelectedRatio.AtLeast(test, alarmCount),
            test.Completeness, drift ? null : test.P, q, drift ? options.DriftRunLength : null,
            TrendMonth.Day(since), certainty, alarmCount, new AlarmLimit(alarmCount, askedFor).DetectableRatio(test.Expected),
            customer.Cases, customer.Survives, technician.Largest, technician.Survives, model.Largest, model.Survives,
            built is null ? null : TrendMonth.Day(built.From), built is null ? null : TrendMonth.Day(built.To), built?.Cases, built?.Known,
            partOf is null ? null : $"{partOf.ApplianceType} / {partOf.Component} / {partOf.ModelFamily}", cases.Count);
        return (alarm, [.. cases.Select(c => new TrendAlarmJob(month, kind, key.ApplianceType, key.Component, key.ModelFamily, c.JobId))]);
    }

    private (int Month, double Certainty) Since(SeriesTest test)
    {
        SeriesCounts counts = table.Counts(test.Key);
        (int Month, double Count, double Exposure)[] months =
            [.. Enumerable.Range(counts.First, test.Month - counts.First + 1)
                .Where(m => m > test.Month - options.BaselineMonths - options.SkippedMonths)
                .Select(m => (m, (double)counts.Known(m, _view.AsOf), _view.Exposure(test.Key, counts, m)))
                .Where(m => m.Item3 > 0)];
        double mean = months.Sum(m => m.Exposure) / months.Length;
        ChangePoint? change = ChangePoint.Find([.. months.Select(m => (m.Count, m.Exposure / mean))]);
        return change is { } c && c.RateAfter > c.RateBefore ? (months[c.LastBefore + 1].Month, c.LogBayesFactor) : (test.Month, change?.LogBayesFactor ?? 0);
    }

    private BuildWindow? Built(SeriesKey key, int since, int month)
    {
        int from = Math.Max(since, month - LongestRise + 1);
        IReadOnlyList<TrendCall> cases = table.Cases(key, from, month, _view.AsOf);
        HashSet<string> own = [.. cases.Select(c => c.JobId)];
        return BuildWindow.Find(
            [.. cases.Where(c => c.MadeMonth is not null).Select(c => c.MadeMonth!.Value)],
            [.. table.Group(key).Where(c => c.Month >= from - LongestRise && c.Month <= month && c.MadeMonth is not null && !own.Contains(c.JobId)).Select(c => c.MadeMonth!.Value)]);
    }
}

/// <summary>What a limit on a monthly count can do.</summary>
/// <param name="Limit">Smallest count that alarms.</param>
/// <param name="Size">Chance of a false alarm in a month.</param>
internal sealed record AlarmLimit(long Limit, double Size)
{
    /// <summary>The count that a series would have needed in its month, the effect gate included.</summary>
    /// <param name="test">The series in its month.</param>
    /// <param name="askedFor">Chance asked for among everything scanned (<see cref="MonthScan.AskedFor"/>).</param>
    /// <param name="options">Settings.</param>
    public static long Of(SeriesTest test, double askedFor, TrendOptions options) =>
        Math.Max(options.Gate.Fewest(test.Expected), new PredictiveTail(test.Baseline, test.Exposure).AlarmCount(askedFor));

    /// <summary>The smallest multiple of a mean that reaches the limit with the chance asked for; null at a mean of 0.</summary>
    public double? DetectableRatio(double mean, double power = 0.8)
    {
        if (!(mean > 0))
        {
            return null;
        }

        // The mean at which P(Y >= limit) = power is a gamma quantile: P(Y >= L | m) = P(Gamma(L, 1) <= m).
        return Limit <= 0 ? 1 : new GammaDistribution(Limit, 1).Quantile(power) / mean;
    }
}
