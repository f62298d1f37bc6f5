using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>
/// Negative binomial counts with a real-valued size: P(k) = Gamma(size + k) / (Gamma(size) k!) prob^size (1 - prob)^k,
/// mean size (1 - prob) / prob, variance mean + mean^2 / size.
/// </summary>
internal sealed record NegativeBinomialDistribution
{
    /// <summary>A distribution; size finite and above 0, prob above 0 and at most 1 (then the count is always 0).</summary>
    public NegativeBinomialDistribution(double size, double prob)
    {
        Size = Probability.Positive(size, nameof(size));
        Prob = prob is > 0 and <= 1 ? prob : throw new ArgumentOutOfRangeException(nameof(prob), prob, "0 < prob <= 1 is needed.");
    }

    /// <summary>Size (dispersion): the smaller, the more the counts scatter.</summary>
    public double Size { get; }

    /// <summary>The parameter prob of the formula above.</summary>
    public double Prob { get; }

    /// <summary>The mean.</summary>
    public double Mean => Size * (1 - Prob) / Prob;

    /// <summary>By mean (above or at 0) and size.</summary>
    public static NegativeBinomialDistribution FromMean(double mean, double size) => new(size, size / (size + mean));

    /// <summary>
    /// Count over an exposure whose rate has the given gamma distribution: size = shape, prob = rate / (rate + exposure).
    /// </summary>
    public static NegativeBinomialDistribution Predictive(GammaDistribution rate, double exposure) =>
        new(rate.Shape, rate.Rate / (rate.Rate + exposure));

    /// <summary>ln P(X = k), k &gt;= 0; between whole numbers its smooth continuation, for expected counts.</summary>
    public double LogPmf(double k)
    {
        if (k == 0)
        {
            return Size * Math.Log(Prob);
        }

        return Prob == 1
            ? double.NegativeInfinity
            : IncompleteBeta.LogPower(Size, k, Prob, 1 - Prob) - Math.Log(k);
    }

    /// <summary>P(X = k).</summary>
    public double Pmf(long k) => k < 0 ? 0 : Math.Exp(LogPmf(k));

    /// <summary>P(X &lt;= k).</summary>
    public double Cdf(long k) => k < 0 ? 0 : IncompleteBeta.Lower(Size, k + 1, Prob, 1 - Prob);

    /// <summary>P(X &gt; k), right far out.</summary>
    public double UpperTail(long k) => k < 0 ? 1 : IncompleteBeta.Lower(k + 1, Size, 1 - Prob, Prob);

    /// <summary>Smallest k with P(X &lt;= k) &gt;= p, 0 &lt;= p &lt; 1.</summary>
    public long Quantile(double p)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(Probability.Check(p), 1);
        double z = p is > 0 ? NormalDistribution.Quantile(p) : -10;
        return MonotoneQuantile.Smallest(Cdf, p, Mean + (z * Math.Sqrt(Mean / Prob)));
    }
}
