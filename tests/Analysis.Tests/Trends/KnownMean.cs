using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

/// <summary>Limits on a monthly count whose usual mean is known, which only a generated shop's is.</summary>
internal static class KnownMean
{
    /// <summary>The smallest limit with a false alarm chance of at most alpha.</summary>
    public static AlarmLimit Limit(double mean, double alpha)
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
    public static double Power(AlarmLimit limit, double mean) => new PoissonDistribution(mean).UpperTail(limit.Limit - 1);
}
