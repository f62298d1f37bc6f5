using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>Beta distribution on 0 to 1.</summary>
internal sealed record BetaDistribution
{
    /// <summary>A distribution; both shapes finite and above 0.</summary>
    public BetaDistribution(double a, double b) =>
        (A, B) = (Probability.Positive(a, nameof(a)), Probability.Positive(b, nameof(b)));

    /// <summary>First shape: successes and their prior.</summary>
    public double A { get; }

    /// <summary>Second shape: failures and their prior.</summary>
    public double B { get; }

    /// <summary>a / (a + b).</summary>
    public double Mean => A / (A + B);

    /// <summary>P(X &lt;= x).</summary>
    public double Cdf(double x) => IncompleteBeta.Lower(A, B, Math.Clamp(x, 0, 1));

    /// <summary>
    /// The x with P(X &lt;= x) = p. The search runs in the log odds of x, and in the smaller tail, so that shapes near 0
    /// keep their digits; where x is below 1e-308 the answer is 0.
    /// </summary>
    public double Quantile(double p)
    {
        Probability.Check(p);
        if (p is 0 or 1)
        {
            return p;
        }

        bool below = p <= 0.5;
        double target = Math.Log(below ? p : 1 - p);
        double guess = below
            ? (target + Math.Log(A) + IncompleteBeta.LogBeta(A, B)) / A
            : -(target + Math.Log(B) + IncompleteBeta.LogBeta(A, B)) / B;
        double center = Math.Log(A / B);
        double start = below ? Math.Min(guess, center) : Math.Max(guess, center);
        double u = MonotoneQuantile.Solve(u => Distance(u, below, target), start);
        return u < 0 ? Math.Exp(u) / (1 + Math.Exp(u)) : 1 / (1 + Math.Exp(-u));
    }

    private (double Value, double Slope) Distance(double u, bool below, double target)
    {
        double odds = Math.Exp(-Math.Abs(u));
        double small = odds / (1 + odds);
        (double x, double y) = u < 0 ? (small, 1 - small) : (1 - small, small);
        if (small < 1e-290)
        {
            // So far out the leading power is exact, and x or 1 - x may have underflowed.
            (double shape, bool atZero) = u < 0 ? (A, true) : (B, false);
            double leading = (-shape * Math.Abs(u)) - Math.Log(shape) - IncompleteBeta.LogBeta(A, B);
            double far = below == atZero ? leading : Math.Log(1 - Math.Exp(leading));
            return (below ? far - target : target - far, shape);
        }

        double tail = below ? IncompleteBeta.Lower(A, B, x, y) : IncompleteBeta.Lower(B, A, y, x);
        double log = Math.Log(tail);
        double slope = Math.Exp(IncompleteBeta.LogPower(A, B, x, y) - log);
        return (below ? log - target : target - log, slope);
    }
}
