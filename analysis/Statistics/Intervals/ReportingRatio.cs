using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Intervals;

/// <summary>Plain ratios of a two-by-two table for readers who want no logarithm (Evans, Waller &amp; Davis 2001).</summary>
internal static class ReportingRatio
{
    /// <summary>
    /// Share of the component among the family's jobs over its share among all others', with a log-normal interval;
    /// missing where a count it needs is 0.
    /// </summary>
    /// <param name="pair">Jobs of the family that needed the component.</param>
    /// <param name="row">Jobs of the family.</param>
    /// <param name="column">Jobs of any family that needed the component.</param>
    /// <param name="total">All jobs.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public static Estimate Proportional(long pair, long row, long column, long total, double confidence = 0.95)
    {
        double c = column - pair, others = total - row;
        if (pair == 0 || c == 0 || others == 0)
        {
            return Estimate.None("no jobs to compare");
        }

        double ratio = pair / (double)row / (c / others);
        double spread = Proportion.Z(confidence) * Math.Sqrt((1.0 / pair) - (1.0 / row) + (1 / c) - (1 / others));
        return Estimate.From(ratio, ratio * Math.Exp(-spread), ratio * Math.Exp(spread));
    }

    /// <summary>Odds ratio with Woolf's (1955) interval; missing where a cell is 0.</summary>
    public static Estimate Odds(long pair, long row, long column, long total, double confidence = 0.95)
    {
        double a = pair, b = row - pair, c = column - pair, d = total - row - column + pair;
        if (a == 0 || b == 0 || c == 0 || d == 0)
        {
            return Estimate.None("no jobs to compare");
        }

        double ratio = a * d / (b * c);
        double spread = Proportion.Z(confidence) * Math.Sqrt((1 / a) + (1 / b) + (1 / c) + (1 / d));
        return Estimate.From(ratio, ratio * Math.Exp(-spread), ratio * Math.Exp(spread));
    }
}

/// <summary>
/// How much more often a pair occurs than its margins say, for data without a denominator (Noren, Hopstadius &amp; Bate
/// 2013): IC = log2((O + 1/2) / (E + 1/2)), interval from Gamma(O + 1/2, E + 1/2). 0: as expected; 1: twice. One terrible
/// partner hides the others of its row, so show the plain share beside it.
/// </summary>
internal static class InformationComponent
{
    /// <summary>IC with its interval.</summary>
    /// <param name="observed">Count of the pair.</param>
    /// <param name="expected">Row total times column total over the grand total; 0 or more.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public static Estimate From(long observed, double expected, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(observed);
        ArgumentOutOfRangeException.ThrowIfNegative(expected);
        var gamma = new GammaDistribution(observed + 0.5, expected + 0.5);
        double tail = (1 - confidence) / 2;
        return Estimate.From(
            Math.Log2((observed + 0.5) / (expected + 0.5)), Math.Log2(gamma.Quantile(tail)), Math.Log2(gamma.Quantile(1 - tail)));
    }
}
