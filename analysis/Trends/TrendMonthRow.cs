namespace PartsSignal.Analysis.Trends;

/// <summary>One month of a series, seen from the last month, for plotting.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">A component, or all.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="Month">First day of the month.</param>
/// <param name="Calls">Calls of the group the series is held against.</param>
/// <param name="Known">Cases known by now.</param>
/// <param name="Completeness">Share of the month's cases known by now.</param>
/// <param name="Nowcast">Cases there will be once all are known.</param>
/// <param name="Expected">Cases the last baseline would have expected to be known.</param>
/// <param name="AlarmCount">Smallest count that would have alarmed in the last month's scan.</param>
public sealed record TrendMonthRow(
    string ApplianceType,
    string Component,
    string ModelFamily,
    DateOnly Month,
    long Calls,
    long Known,
    double Completeness,
    double? Nowcast,
    double Expected,
    long AlarmCount)
{
    /// <summary>All months of a series up to the one its test is of.</summary>
    internal static IEnumerable<TrendMonthRow> From(CallTable table, SeriesTest test, double askedFor, MonthView view, TrendOptions options)
    {
        SeriesKey key = test.Key;
        SeriesCounts counts = table.Counts(key);
        for (int month = table.First; month <= test.Month; month++)
        {
            long known = counts.Known(month, view.AsOf);
            double completeness = view.Delays.Completeness(key, view.AsOf - month);
            double exposure = view.Exposure(key, counts, month);
            PredictiveTail? tail = exposure > 0 ? new PredictiveTail(test.Baseline, exposure) : null;
            yield return new TrendMonthRow(
                key.ApplianceType, key.Component, key.ModelFamily, TrendMonth.Day(month), counts.Calls(month), known, completeness,
                completeness > 0 ? known / completeness : null, tail?.Expected ?? 0, tail is null ? 1 : Math.Max(options.Gate.Fewest(tail.Expected), tail.AlarmCount(askedFor)));
        }
    }
}
