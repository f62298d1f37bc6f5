using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends.Screening;

/// <summary>What a limit on a monthly count can do.</summary>
/// <param name="Limit">Smallest count that alarms.</param>
/// <param name="Size">Chance of a false alarm in a month.</param>
public sealed record AlarmLimit(long Limit, double Size)
{
    /// <summary>The smallest limit with a false alarm chance of at most alpha, for a known mean.</summary>
    public static AlarmLimit ForMean(double mean, double alpha)
    {
        var counts = new PoissonDistribution(mean);
        long limit = counts.Quantile(1 - alpha);
        while (counts.UpperTail(limit - 1) > alpha)
        {
            limit++;
        }

        return new AlarmLimit(limit, counts.UpperTail(limit - 1));
    }

    /// <summary>Chance that a month with this mean reaches the limit.</summary>
    public double Power(double mean) => new PoissonDistribution(mean).UpperTail(Limit - 1);

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
