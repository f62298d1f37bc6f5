using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Intervals;

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
