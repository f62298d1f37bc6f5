using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>Chi-square distribution.</summary>
/// <param name="DegreesOfFreedom">Above 0, not necessarily whole.</param>
internal sealed record ChiSquareDistribution(double DegreesOfFreedom)
{
    /// <summary>P(X &lt;= x).</summary>
    public double Cdf(double x) => x <= 0 ? 0 : IncompleteGamma.Lower(DegreesOfFreedom / 2, x / 2);

    /// <summary>P(X &gt; x).</summary>
    public double UpperTail(double x) => x <= 0 ? 1 : IncompleteGamma.Upper(DegreesOfFreedom / 2, x / 2);

    /// <summary>The x with P(X &lt;= x) = p.</summary>
    public double Quantile(double p) => new GammaDistribution(DegreesOfFreedom / 2, 0.5).Quantile(p);
}
