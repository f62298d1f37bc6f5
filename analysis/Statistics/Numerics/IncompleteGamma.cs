using System.Runtime.CompilerServices;

namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>
/// The regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 - P(a, x): a series below x = a + 1, a continued
/// fraction above (Abramowitz &amp; Stegun 1964, 6.5.29 and 6.5.31).
/// </summary>
internal static class IncompleteGamma
{
    private const int MostTerms = 10_000_000;

    /// <summary>P(a, x): share of a gamma distribution of shape a below x. a &gt; 0, x &gt;= 0.</summary>
    public static double Lower(double a, double x)
    {
        Check(a, x);
        return x == 0 ? 0 : double.IsPositiveInfinity(x) ? 1 : x < a + 1 ? Series(a, x) : 1 - Fraction(a, x);
    }

    /// <summary>Q(a, x): share of a gamma distribution of shape a above x. a &gt; 0, x &gt;= 0.</summary>
    public static double Upper(double a, double x)
    {
        Check(a, x);
        return x == 0 ? 1 : double.IsPositiveInfinity(x) ? 0 : x < a + 1 ? 1 - Series(a, x) : Fraction(a, x);
    }

    /// <summary>ln of x^a e^-x / Gamma(a + 1), in Loader's (2000) form where the plain one loses digits.</summary>
    internal static double LogPower(double a, double x) => a < 1
        ? (a * Math.Log(x)) - x - GammaFunction.Log(a + 1)
        : -GammaFunction.StirlingError(a) - GammaFunction.Deviance(a, x) - GammaFunction.HalfLogTwoPi - (0.5 * Math.Log(a));

    private static double Series(double a, double x)
    {
        double term = 1;
        double sum = 1;
        for (int n = 1; n < MostTerms && term > sum * 1e-17; n++)
        {
            term *= x / (a + n);
            sum += term;
        }

        return Math.Min(1, Math.Exp(LogPower(a, x)) * sum);
    }

    // Lentz's method with Thompson and Barnett's change. Compiled at full strength at once: a run is over before the run time would have noticed that it is hot.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double Fraction(double a, double x)
    {
        const double Tiny = 1e-300;
        double b = x + 1 - a;
        double c = 1 / Tiny;
        double d = 1 / b;
        double h = d;
        for (int i = 1; i < MostTerms; i++)
        {
            double an = -i * (i - a);
            b += 2;
            d = (an * d) + b;
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = b + (an / c);
            c = Math.Abs(c) < Tiny ? Tiny : c;
            double delta = d * c;
            h *= delta;
            if (Math.Abs(delta - 1) < 1e-16)
            {
                break;
            }
        }

        return Math.Min(1, Math.Exp(LogPower(a, x)) * a * h);
    }

    private static void Check(double a, double x)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(a);
        ArgumentOutOfRangeException.ThrowIfNegative(x);
        if (double.IsNaN(a) || double.IsNaN(x))
        {
            throw new ArgumentOutOfRangeException(nameof(x), "Not a number.");
        }
    }
}
