using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>The standard normal distribution.</summary>
internal static class NormalDistribution
{
    private static readonly Known?[] Recent = new Known?[61];

    /// <summary>P(Z &lt;= z).</summary>
    public static double Cdf(double z) =>
        z < 0 ? 0.5 * IncompleteGamma.Upper(0.5, z * z / 2) : 0.5 + (0.5 * IncompleteGamma.Lower(0.5, z * z / 2));

    /// <summary>P(Z &gt; z), right far out.</summary>
    public static double UpperTail(double z) => Cdf(-z);

    /// <summary>P(|Z| &gt;= |z|).</summary>
    public static double TwoSidedP(double z) => Math.Min(1, 2 * Cdf(-Math.Abs(z)));

    /// <summary>Density at z.</summary>
    public static double Pdf(double z) => Math.Exp((-z * z / 2) - GammaFunction.HalfLogTwoPi);

    /// <summary>The z with P(Z &lt;= z) = p, 0 &lt; p &lt; 1; -1.96 for p = 0.025.</summary>
    public static double Quantile(double p)
    {
        if (!(p > 0 && p < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "The normal quantile is finite for 0 < p < 1 only.");
        }

        if (p > 0.5)
        {
            return -Lower(1 - p);
        }

        return p == 0.5 ? 0 : Lower(p);
    }

    // A table of rates asks for the same two or three levels a hundred thousand times.
    private static double Lower(double p)
    {
        ref Known? place = ref Recent[(uint)p.GetHashCode() % (uint)Recent.Length];
        if (place is not { } known || known.P != p)
        {
            place = known = new Known(p, Search(p));
        }

        return known.Z;
    }

    // Hastings' approximation (Abramowitz & Stegun 1964, 26.2.23) starts the search in the log of the lower tail.
    private static double Search(double p)
    {
        double t = Math.Sqrt(-2 * Math.Log(p));
        double start = (((0.010328 * t) + 0.802853) * t + 2.515517)
            / (((((0.001308 * t) + 0.189269) * t + 1.432788) * t) + 1) - t;
        double log = Math.Log(p);
        return MonotoneQuantile.Solve(z => (Math.Log(Cdf(z)) - log, Pdf(z) / Cdf(z)), start);
    }

    private sealed record Known(double P, double Z);
}
