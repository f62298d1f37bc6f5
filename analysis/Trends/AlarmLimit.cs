using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>What a limit on a monthly count can do.</summary>
/// <param name="Limit">Smallest count that alarms.</param>
/// <param name="Size">Chance of a false alarm in a month.</param>
internal sealed record AlarmLimit(long Limit, double Size)
{
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
