using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Trends;

/// <summary>One scanned month: how much was looked at and what chance alone would give.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="SeriesTested">Series looked at.</param>
/// <param name="MonthAlarms">Those that rose.</param>
/// <param name="SeriesSummed">Series in which slow rises were looked for.</param>
/// <param name="DriftAlarms">Slow rises that reached their limit in this month.</param>
/// <param name="FalseShare">Largest mean share of false ones among the month alarms.</param>
/// <param name="FalseDrifts">Slow rises that chance alone would give in a month.</param>
/// <param name="FalsePerYear">Alarms to expect in a year in which nothing changes: every one of them is false then.</param>
public sealed record TrendScan(
    DateOnly Month, int SeriesTested, int MonthAlarms, int SeriesSummed, int DriftAlarms, double FalseShare, double FalseDrifts, double FalsePerYear);

/// <summary>Share of a component's cases known so many months after the call, as of the last month.</summary>
/// <param name="Component">A component with enough cases of its own, or all.</param>
/// <param name="MonthsAfter">0: by the end of the month of the call.</param>
/// <param name="ShareKnown">0 to 1.</param>
public sealed record DelayRow(string Component, int MonthsAfter, double ShareKnown);

/// <summary>All trends of a store.</summary>
/// <param name="Alarms">Every alarm of every month, as it could be told at that month's end.</param>
/// <param name="AlarmJobs">The jobs behind them.</param>
/// <param name="Scans">Every scanned month.</param>
/// <param name="Tests">Every series tested in the last month.</param>
/// <param name="Months">Months of every series tested in the last month, for plotting.</param>
/// <param name="Delays">How late components become known.</param>
public sealed record TrendTables(
    IReadOnlyList<TrendAlarm> Alarms,
    IReadOnlyList<TrendAlarmJob> AlarmJobs,
    IReadOnlyList<TrendScan> Scans,
    IReadOnlyList<TrendTestRow> Tests,
    IReadOnlyList<TrendMonthRow> Months,
    IReadOnlyList<DelayRow> Delays)
{
    /// <summary>Scans every month of a store, oldest first; a month never sees what came after it.</summary>
    public static TrendTables Create(Database database, TrendOptions? options = null)
    {
        IReadOnlyList<LoggedMonths> span = database.ReadTable<LoggedMonths>("trend_span");
        return span.Count == 0 || span[0].LastMonth < span[0].FirstMonth
            ? new TrendTables([], [], [], [], [], [])
            : Create(new CallTable(TrendCall.Read(database), span[0].FirstMonth, span[0].LastMonth), options ?? new TrendOptions());
    }

    /// <summary>Scans every month of a call table.</summary>
    public static TrendTables Create(CallTable table, TrendOptions options)
    {
        var alarms = new List<TrendAlarm>();
        var jobs = new List<TrendAlarmJob>();
        var scans = new List<TrendScan>();
        var flagged = new HashSet<(SeriesKey, int)>();
        MonthScan? last = null;
        for (int month = table.First + options.FewestBaselineMonths + options.SkippedMonths; month <= table.Last; month++)
        {
            last = MonthScan.Create(table, MonthView.At(table, month, flagged, options), options);
            var writer = new AlarmWriter(table, last, options);
            var explanation = new RootAlarm(table, last.View, options);
            SeriesTest[] risen = [.. last.Risen.Select(r => r.Test)];
            foreach ((TrendAlarm alarm, IReadOnlyList<TrendAlarmJob> behind) in last.Risen.Select(r => writer.OfMonth(r.Test, r.Q, explanation.Of(r.Test, risen)))
                .Concat(last.Drifts.Select(d => writer.OfDrift(d, Explained(d, risen)))))
            {
                alarms.Add(alarm);
                jobs.AddRange(behind);
                int since = Math.Max(month - options.DriftMonths + 1, alarm.Since.Year * 12 + alarm.Since.Month - 1);
                flagged.UnionWith(Enumerable.Range(since, month - since + 1).Select(m => (alarm.Key(), m)));
            }

            scans.Add(new TrendScan(
                TrendMonth.Day(month), last.Tests.Count, last.Risen.Count, last.Summed, last.Drifts.Count,
                options.Gate.Q, last.Summed / options.DriftRunLength, 12 * (options.Gate.Q + last.Summed / options.DriftRunLength)));
        }

        return new TrendTables(
            alarms, jobs, scans,
            last is null ? [] : [.. last.Tests.Select(t => TrendTestRow.From(table, t, last.AskedFor(t.Test.Key, options), last.View, options))],
            last is null ? [] : [.. last.Tests.SelectMany(t => TrendMonthRow.From(table, t.Test, last.AskedFor(t.Test.Key, options), last.View, options))],
            last is null ? [] : Delay(last.View.Delays));
    }

    private sealed record LoggedMonths(int FirstMonth, int LastMonth);

    private static SeriesKey? Explained(DriftTest drift, SeriesTest[] risen) =>
        risen.Select(r => r.Key).FirstOrDefault(k => k.ApplianceType == drift.Key.ApplianceType
            && (k.Component == drift.Key.Component || k.ModelFamily == drift.Key.ModelFamily) && !drift.Key.IsParent);

    private static DelayRow[] Delay(DelayModel delays) =>
        [.. delays.Own.OrderBy(d => d.Key, StringComparer.Ordinal).Select(d => (d.Key, d.Value)).Prepend((SeriesKey.All, delays.Pooled))
            .SelectMany(d => d.Item2.Completeness.Select((c, i) => new DelayRow(d.Item1, i, c)))];
}
