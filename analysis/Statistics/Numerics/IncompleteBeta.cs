namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>The regularised incomplete beta function by its continued fraction (Abramowitz &amp; Stegun 1964, 26.5.8).</summary>
internal static class IncompleteBeta
{
    private const int MostTerms = 1_000_000;

    /// <summary>ln B(a, b).</summary>
    public static double LogBeta(double a, double b) =>
        GammaFunction.Log(a) + GammaFunction.Log(b) - GammaFunction.Log(a + b);

    /// <summary>I_x(a, b): share of a beta distribution below x. a, b &gt; 0, 0 &lt;= x &lt;= 1.</summary>
    public static double Lower(double a, double b, double x) => Lower(a, b, x, 1 - x);

    /// <summary>I_x(a, b) where 1 - x is known to more digits than x can carry.</summary>
    /// <param name="a">First shape, above 0.</param>
    /// <param name="b">Second shape, above 0.</param>
    /// <param name="x">Upper end, 0 to 1.</param>
    /// <param name="y">1 - x.</param>
    internal static double Lower(double a, double b, double x, double y)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(a);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(b);
        if (!(x >= 0 && y >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(x), "x is between 0 and 1.");
        }

        return x == 0 ? 0
            : y == 0 ? 1
            : x < (a + 1) / (a + b + 2) ? Fraction(a, b, x, y)
            : 1 - Fraction(b, a, y, x);
    }

    /// <summary>ln of x^a y^b / B(a, b), in Loader's (2000) form where the plain one loses digits.</summary>
    internal static double LogPower(double a, double b, double x, double y)
    {
        if (a < 1 || b < 1)
        {
            return (a * Math.Log(x)) + (b * LogOf(y, x)) - LogBeta(a, b);
        }

        double n = a + b;
        return GammaFunction.StirlingError(n) - GammaFunction.StirlingError(a) - GammaFunction.StirlingError(b)
            - GammaFunction.Deviance(a, n * x) - GammaFunction.Deviance(b, n * y)
            - GammaFunction.HalfLogTwoPi + (0.5 * Math.Log(a * (b / n)));
    }

    private static double LogOf(double y, double x) => x < 0.1 ? LogOnePlus(-x) : Math.Log(y);

    // ln(1 + z) for small z, by the correction of Kahan.
    private static double LogOnePlus(double z)
    {
        double u = 1 + z;
        return u == 1 ? z : Math.Log(u) * z / (u - 1);
    }

    private static double Fraction(double a, double b, double x, double y)
    {
        const double Tiny = 1e-300;
        double sum = a + b;
        double c = 1;
        double d = 1 - (sum * x / (a + 1));
        d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
        double h = d;
        for (int m = 1; m < MostTerms; m++)
        {
            double even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            h *= Step(even, ref c, ref d);
            double odd = -(a + m) * (sum + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            double delta = Step(odd, ref c, ref d);
            h *= delta;
            if (Math.Abs(delta - 1) < 1e-16)
            {
                break;
            }
        }

        return Math.Clamp(Math.Exp(LogPower(a, b, x, y)) * h / a, 0, 1);

        static double Step(double factor, ref double c, ref double d)
        {
            d = 1 + (factor * d);
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = 1 + (factor / c);
            c = Math.Abs(c) < Tiny ? Tiny : c;
            return c * d;
        }
    }
}
