namespace PartsSignal.Analysis.Trends;

/// <summary>
/// Which of several alarms of one month is the news. A component rises in all families, or one family drags it up; a
/// family's calls rise in all faults, or one component drags them up. The alarm that is left without a rise once the
/// other's calls are taken out, in every month, is part of it.
/// </summary>
internal sealed class RootAlarm(CallTable table, MonthView view, TrendOptions options)
{
    private const double RestUnlikely = 0.01;
    private const double MoreThanTheRest = 0.05;

    /// <summary>The alarm of the month that explains this one, or null if it stands by itself.</summary>
    public SeriesKey? Of(SeriesTest alarm, IReadOnlyCollection<SeriesTest> alarms)
    {
        bool wide = IsWide(alarm.Key);
        return alarms
            .Where(a => a.Key.ApplianceType == alarm.Key.ApplianceType && IsWide(a.Key) != wide
                && (a.Key.Component == alarm.Key.Component || a.Key.ModelFamily == alarm.Key.ModelFamily))
            .OrderBy(a => a.P).ThenBy(a => a.Key.Component, StringComparer.Ordinal).ThenBy(a => a.Key.ModelFamily, StringComparer.Ordinal)
            .FirstOrDefault(a => wide ? !StillRises(Rest(alarm, a)) : ExplainedBy(a, alarm))?.Key;
    }

    private static bool IsWide(SeriesKey key) => key.IsParent || key.IsFamily;

    // The rest of the wide series rises as well, and the narrow one rises no more than that rest.
    private bool ExplainedBy(SeriesTest wide, SeriesTest narrow) =>
        Rest(wide, narrow) is { } rest && StillRises(rest)
        && new PredictiveTail(narrow.Baseline, narrow.Exposure * rest.Ratio).MidP(narrow.Observed) > MoreThanTheRest;

    private bool StillRises(SeriesTest? rest) =>
        rest is not null && rest.P <= RestUnlikely && rest.Ratio >= options.Gate.Ratio;

    private SeriesTest? Rest(SeriesTest wide, SeriesTest narrow)
    {
        IEnumerable<TrendCall> others = table.Group(wide.Key).Where(c =>
            c.ModelFamily != narrow.Key.ModelFamily || (wide.Key.IsFamily && !narrow.Key.Counts(c)));
        return SeriesTest.Create(wide.Key, SeriesCounts.From(wide.Key, others, table.First, table.Last), wide.Month, view, options);
    }
}
