using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>One series in the last month: what was tested, what could have been seen, and how it moves over the years.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">A component, or all.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="Month">First day of the month.</param>
/// <param name="BaselineMonths">Months of the baseline.</param>
/// <param name="BaselineEvents">Cases in it.</param>
/// <param name="Scatter">Variance of its months over their mean, 1 or more.</param>
/// <param name="Completeness">Share of the month's cases known by its end.</param>
/// <param name="Expected">Cases expected to be known.</param>
/// <param name="Observed">Cases known.</param>
/// <param name="P">Mid-p of so many or more.</param>
/// <param name="Q">The same held against everything scanned.</param>
/// <param name="DetectableRatio">Smallest rise that would have been found four times out of five.</param>
/// <param name="AnnualRatio">Rate of a year over that of the year before, season allowed for; null with a reason.</param>
/// <param name="AnnualLower">Lower end of its 95 % interval.</param>
/// <param name="AnnualUpper">Upper end of its 95 % interval.</param>
/// <param name="TrendModel">poisson or negative_binomial; null without a trend.</param>
/// <param name="TrendMissing">Why there is no trend.</param>
public sealed record TrendTestRow(
    string ApplianceType,
    string Component,
    string ModelFamily,
    DateOnly Month,
    int BaselineMonths,
    double BaselineEvents,
    double Scatter,
    double Completeness,
    double Expected,
    long Observed,
    double P,
    double Q,
    double? DetectableRatio,
    double? AnnualRatio,
    double? AnnualLower,
    double? AnnualUpper,
    string? TrendModel,
    string? TrendMissing)
{
    private const int FewestMonths = 24;
    private const double TooMuchScatter = 1.5;
    private static readonly double Z = NormalDistribution.Quantile(0.975);

    /// <summary>The row of one test.</summary>
    /// <param name="table">All calls.</param>
    /// <param name="scanned">The test.</param>
    /// <param name="askedFor">Chance that it had to reach among everything scanned.</param>
    /// <param name="view">What was known then.</param>
    /// <param name="options">Settings.</param>
    internal static TrendTestRow From(CallTable table, ScannedTest scanned, double askedFor, MonthView view, TrendOptions options)
    {
        SeriesTest test = scanned.Test;
        SeriesKey key = test.Key;
        SeriesCounts counts = table.Counts(key);
        int[] months = [.. Enumerable.Range(table.First, test.Month - table.First + 1).Where(m => counts.Calls(m) > 0)];
        CountModel trend = Trend([.. months.Select(m => (m, counts.Known(m, view.AsOf), counts.Calls(m) * view.Delays.Completeness(key, view.AsOf - m)))]);
        double? slope = trend.Missing is null ? 12 * trend.Coefficients[1] : null;
        double error = trend.Missing is null ? 12 * trend.StandardErrors[1] * Math.Sqrt(trend.Theta is null ? Math.Max(1, trend.Dispersion ?? 1) : 1) : 0;
        long alarmCount = AlarmLimit.Of(test, askedFor, options);
        return new TrendTestRow(
            key.ApplianceType, key.Component, key.ModelFamily, TrendMonth.Day(test.Month),
            test.BaselineMonths, test.Baseline.Events, test.Baseline.Scatter, test.Completeness, test.Expected, test.Observed, test.P, scanned.Q,
            new AlarmLimit(alarmCount, askedFor).DetectableRatio(test.Expected),
            Bounded(slope), Bounded(slope - Z * error), Bounded(slope + Z * error),
            trend.Missing is not null ? null : trend.Theta is null ? "poisson" : "negative_binomial", trend.Missing);
    }

    private static CountModel Trend(IReadOnlyList<(int Month, long Count, double Exposure)> months)
    {
        if (months.Count < FewestMonths)
        {
            return CountModel.None($"fewer than {FewestMonths} months");
        }

        if (months.Sum(m => m.Count) < 10)
        {
            return CountModel.None("fewer than 10 cases");
        }

        int first = months[0].Month;
        CountRow[] rows = [.. months.Where(m => m.Exposure > 0).Select(m => new CountRow(m.Count, m.Exposure, MonthTerms.TrendAndSeason(m.Month - first)))];
        CountModel model = PoissonRegression.Fit(rows);
        return model.Missing is null && model.Dispersion > TooMuchScatter && NegativeBinomialRegression.Fit(rows) is { Missing: null } scattered ? scattered : model;
    }

    private static double? Bounded(double? log) => log is { } l ? Math.Exp(Math.Clamp(l, -20, 20)) : null;
}
