using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>Poisson counts.</summary>
/// <param name="Mean">0 or more; at 0 the count is always 0.</param>
internal sealed record PoissonDistribution(double Mean)
{
    /// <summary>ln P(X = k), k &gt;= 0; minus infinity where the chance is 0. Between whole numbers its smooth continuation, for expected counts.</summary>
    public double LogPmf(double k) => Mean == 0
        ? (k == 0 ? 0 : double.NegativeInfinity)
        : k == 0 ? -Mean : IncompleteGamma.LogPower(k, Mean);

    /// <summary>P(X = k).</summary>
    public double Pmf(long k) => k < 0 ? 0 : Math.Exp(LogPmf(k));

    /// <summary>P(X &lt;= k).</summary>
    public double Cdf(long k) => k < 0 ? 0 : Mean == 0 ? 1 : IncompleteGamma.Upper(k + 1, Mean);

    /// <summary>P(X &gt; k).</summary>
    public double UpperTail(long k) => k < 0 ? 1 : Mean == 0 ? 0 : IncompleteGamma.Lower(k + 1, Mean);

    /// <summary>Smallest k with P(X &lt;= k) &gt;= p, 0 &lt;= p &lt; 1.</summary>
    public long Quantile(double p)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(Probability.Check(p), 1);
        double z = p is > 0 ? NormalDistribution.Quantile(p) : -10;
        return MonotoneQuantile.Smallest(Cdf, p, Mean + (z * Math.Sqrt(Mean)) + ((z * z - 1) / 6));
    }
}
