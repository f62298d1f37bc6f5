using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Intervals;

/// <summary>Observed over expected events, the expectation being what the group would see at everybody's rate in each age band.</summary>
/// <param name="Observed">Events seen.</param>
/// <param name="Expected">Events expected.</param>
/// <param name="Ratio">Observed / expected with Garwood's interval on the observed; missing where nothing is expected.</param>
/// <param name="UpperP">P(X &gt;= observed) under the expectation; null where nothing is expected.</param>
/// <param name="UpperMidP">P(X &gt; observed) + P(X = observed) / 2: the less conservative p for discrete counts.</param>
internal sealed record StandardizedRatio(long Observed, double Expected, Estimate Ratio, double? UpperP, double? UpperMidP)
{
    /// <summary>Compares a count with its expectation.</summary>
    public static StandardizedRatio From(long observed, double expected, double confidence = 0.95)
    {
        if (!(expected > 0))
        {
            return new StandardizedRatio(observed, expected, Estimate.None("nothing expected"), null, null);
        }

        var poisson = new PoissonDistribution(expected);
        double beyond = poisson.UpperTail(observed);
        double here = poisson.Pmf(observed);
        return new StandardizedRatio(
            observed, expected, EventRate.Garwood(observed, expected, confidence), poisson.UpperTail(observed - 1), beyond + (here / 2));
    }
}
