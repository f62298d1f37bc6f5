using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>Gamma distribution by shape and rate (not scale): mean shape / rate.</summary>
internal sealed record GammaDistribution
{
    /// <summary>A distribution; both parameters finite and above 0.</summary>
    public GammaDistribution(double shape, double rate) =>
        (Shape, Rate) = (Probability.Positive(shape, nameof(shape)), Probability.Positive(rate, nameof(rate)));

    /// <summary>Shape.</summary>
    public double Shape { get; }

    /// <summary>Rate, the inverse of the scale.</summary>
    public double Rate { get; }

    /// <summary>Shape / rate.</summary>
    public double Mean => Shape / Rate;

    /// <summary>P(X &lt;= x); 0 for x below 0.</summary>
    public double Cdf(double x) => x <= 0 ? 0 : IncompleteGamma.Lower(Shape, x * Rate);

    /// <summary>P(X &gt; x).</summary>
    public double UpperTail(double x) => x <= 0 ? 1 : IncompleteGamma.Upper(Shape, x * Rate);

    /// <summary>
    /// The x with P(X &lt;= x) = p; 0 at p = 0, infinity at p = 1. Right at small shapes too: the search runs in ln x,
    /// from the leading term P = x^a / Gamma(a + 1) or from Wilson and Hilferty (1931). Below 1e-308 it is 0.
    /// </summary>
    public double Quantile(double p)
    {
        Probability.Check(p);
        if (p is 0 or 1)
        {
            return p == 0 ? 0 : double.PositiveInfinity;
        }

        bool below = p <= IncompleteGamma.Lower(Shape, Shape);
        double target = Math.Log(below ? p : 1 - p);
        double u = MonotoneQuantile.Solve(u => Distance(u, below, target), Start(p));
        return Math.Exp(u) / Rate;
    }

    private double Start(double p)
    {
        double small = (Math.Log(p) + GammaFunction.Log(Shape + 1)) / Shape;
        double cube = 1 - (1 / (9 * Shape)) + (NormalDistribution.Quantile(p) / (3 * Math.Sqrt(Shape)));
        double hilferty = Shape * cube * cube * cube;
        return hilferty > 0.1 * Shape && Shape > 0.5 ? Math.Log(hilferty) : Math.Min(small, 10);
    }

    // Distance of the log tail from its target, in u = ln x, and its slope; increasing in u either way.
    private (double Value, double Slope) Distance(double u, bool below, double target)
    {
        double x = Math.Exp(u);
        if (x < 1e-290)
        {
            // The leading term is exact here, and x itself may have underflowed.
            double leading = (Shape * u) - GammaFunction.Log(Shape + 1);
            return below ? (leading - target, Shape) : (target - Log1MinusExp(leading), Shape);
        }

        double logDensity = IncompleteGamma.LogPower(Shape, x) + Math.Log(Shape);
        double tail = below ? IncompleteGamma.Lower(Shape, x) : IncompleteGamma.Upper(Shape, x);
        double log = Math.Log(tail);
        return below ? (log - target, Math.Exp(logDensity - log)) : (target - log, Math.Exp(logDensity - log));
    }

    private static double Log1MinusExp(double z) => Math.Log(-Math.Exp(z) + 1);
}

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
