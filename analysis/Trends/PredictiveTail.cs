using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>A baseline against which a month is held.</summary>
/// <param name="Events">Events in the baseline months.</param>
/// <param name="Exposure">Exposure of the baseline months, above 0.</param>
/// <param name="Scatter">Variance of a month over its mean, 1 or more: 1 is Poisson.</param>
public sealed record Baseline(double Events, double Exposure, double Scatter = 1);

/// <summary>
/// The count a month may show if nothing changed: gamma posterior of the baseline rate, negative binomial ahead. It
/// allows for a short baseline: with six months at 0.5 a plug-in Poisson test at 0.01 fires at 0.026, this one at
/// 0.007. Months that scatter more than Poisson's widen it by the same factor.
/// </summary>
internal sealed class PredictiveTail
{
    /// <summary>Shape of the prior of a rate: Jeffreys's.</summary>
    public const double PriorShape = 0.5;

    /// <summary>Rate of the prior of a rate, in exposure: next to nothing.</summary>
    public const double PriorRate = 1e-6;

    private readonly NegativeBinomialDistribution _ahead;

    /// <summary>The distribution of a count with some exposure.</summary>
    public PredictiveTail(Baseline baseline, double exposure)
    {
        double shape = PriorShape + baseline.Events / baseline.Scatter;
        Expected = exposure * (PriorShape + baseline.Events) / (PriorRate + baseline.Exposure);
        double variance = baseline.Scatter * Expected + Expected * Expected / shape;
        _ahead = NegativeBinomialDistribution.FromMean(Expected, Expected * Expected / (variance - Expected));
    }

    /// <summary>Expected count.</summary>
    public double Expected { get; }

    /// <summary>P(Y >= count).</summary>
    public double AtLeast(long count) => count <= 0 ? 1 : _ahead.UpperTail(count - 1);

    /// <summary>P(Y > count) + P(Y = count)/2: right on average where counts are few.</summary>
    public double MidP(long count) => Math.Min(1, _ahead.UpperTail(count) + _ahead.Pmf(count) / 2);

    /// <summary>Smallest count with P(Y >= count) at most alpha.</summary>
    public long Limit(double alpha) => _ahead.Quantile(1 - alpha) is var q && AtLeast(q) <= alpha ? q : q + 1;

    /// <summary>Smallest count whose mid-p is at most alpha: the one that an alarm takes.</summary>
    public long AlarmCount(double alpha)
    {
        long limit = Limit(alpha);
        while (limit > 0 && MidP(limit - 1) <= alpha)
        {
            limit--;
        }

        return limit;
    }
}
