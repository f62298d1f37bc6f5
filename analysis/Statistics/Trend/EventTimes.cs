using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Trend;

/// <summary>A trend test's answer.</summary>
/// <param name="Statistic">The statistic; for Laplace positive: events come ever faster.</param>
/// <param name="P">Two-sided p for Laplace; chance of deterioration by luck for the power law.</param>
public sealed record TrendTest(double Statistic, double P);

/// <summary>A power-law (Crow 1975) process: expected events by t are lambda t^beta.</summary>
/// <param name="Beta">Above 1: events come ever faster.</param>
/// <param name="Lambda">Scale.</param>
/// <param name="Test">Chi-square 2 sum ln(T/t) on 2n degrees of freedom; p of its lower tail.</param>
public sealed record PowerLaw(double Beta, double Lambda, TrendTest Test);

/// <summary>Trend in the event times of one unit or of a pooled stream.</summary>
public static class EventTimes
{
    /// <summary>
    /// Laplace's test (Cox &amp; Lewis 1966) for watching that ended at a set time T: the mean event time against T/2.
    /// Null without an event.
    /// </summary>
    /// <param name="times">Event times, 0 &lt; t &lt;= end.</param>
    /// <param name="end">End of watching.</param>
    public static TrendTest? Laplace(IReadOnlyList<double> times, double end) =>
        times.Count == 0 ? null : Laplace(times.Average(), times.Count, end);

    /// <summary>The same for watching that ended with the last event, which then only sets the end. Null with fewer than two events.</summary>
    public static TrendTest? LaplaceToLastEvent(IReadOnlyList<double> times)
    {
        if (times.Count < 2)
        {
            return null;
        }

        double last = times.Max();
        return Laplace((times.Sum() - last) / (times.Count - 1), times.Count - 1, last);
    }

    /// <summary>Power-law fit and test for watching that ended at a set time (MIL-HDBK-189). Null without an event before the end.</summary>
    public static PowerLaw? Crow(IReadOnlyList<double> times, double end)
    {
        double logs = times.Sum(t => Math.Log(end / t));
        if (times.Count == 0 || logs <= 0)
        {
            return null;
        }

        double beta = times.Count / logs;
        double statistic = 2 * logs;
        return new PowerLaw(
            beta, times.Count / Math.Pow(end, beta), new TrendTest(statistic, new ChiSquareDistribution(2 * times.Count).Cdf(statistic)));
    }

    private static TrendTest Laplace(double mean, int count, double end)
    {
        double u = (mean - (end / 2)) / (end * Math.Sqrt(1 / (12.0 * count)));
        return new TrendTest(u, NormalDistribution.TwoSidedP(u));
    }
}
