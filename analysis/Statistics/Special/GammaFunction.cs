namespace PartsSignal.Analysis.Statistics.Special;

/// <summary>The gamma function, its logarithm and their derivatives, for positive arguments.</summary>
public static class GammaFunction
{
    internal const double HalfLogTwoPi = 0.918938533204672741780329736406;

    // From here on the asymptotic series below are exact to the last digits.
    private const double Far = 15;

    /// <summary>ln Gamma(x) for x &gt; 0, by recurrence up to 15 and Stirling's series beyond.</summary>
    public static double Log(double x)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(x);
        double product = 1;
        while (x < Far)
        {
            product *= x;
            x++;
        }

        return ((x - 0.5) * Math.Log(x)) - x + HalfLogTwoPi + StirlingTail(x) - Math.Log(product);
    }

    /// <summary>psi(x), the derivative of ln Gamma, for x &gt; 0.</summary>
    public static double Digamma(double x)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(x);
        double shift = 0;
        while (x < Far)
        {
            shift += 1 / x;
            x++;
        }

        double w = 1 / (x * x);
        double tail = w * ((1 / 12.0) - (w * ((1 / 120.0) - (w * ((1 / 252.0) - (w * ((1 / 240.0) - (w * (1 / 132.0)))))))));
        return Math.Log(x) - (0.5 / x) - tail - shift;
    }

    /// <summary>psi'(x), the derivative of the digamma function, for x &gt; 0.</summary>
    public static double Trigamma(double x)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(x);
        double shift = 0;
        while (x < Far)
        {
            shift += 1 / (x * x);
            x++;
        }

        double w = 1 / (x * x);
        double tail = w * ((1 / 6.0) - (w * ((1 / 30.0) - (w * ((1 / 42.0) - (w * ((1 / 30.0) - (w * (5 / 66.0)))))))));
        return shift + (1 / x) + (0.5 * w) + (tail / x);
    }

    /// <summary>
    /// Error of Stirling's formula: ln n! - ln(sqrt(2 pi n) (n/e)^n) for real n &gt; 0 (Loader 2000).
    /// </summary>
    internal static double StirlingError(double n) => n >= Far
        ? StirlingTail(n)
        : Log(n + 1) - ((n + 0.5) * Math.Log(n)) + n - HalfLogTwoPi;

    /// <summary>x ln(x/m) + m - x without loss of digits where x is close to m (Loader 2000).</summary>
    internal static double Deviance(double x, double m)
    {
        if (Math.Abs(x - m) >= 0.1 * (x + m))
        {
            return (x * Math.Log(x / m)) + m - x;
        }

        double v = (x - m) / (x + m);
        double sum = (x - m) * v;
        double term = 2 * x * v;
        v *= v;
        for (int j = 1; ; j++)
        {
            term *= v;
            double next = sum + (term / ((2 * j) + 1));
            if (next == sum)
            {
                return next;
            }

            sum = next;
        }
    }

    private static double StirlingTail(double x)
    {
        double w = 1 / (x * x);
        return ((1 / 12.0) - (w * ((1 / 360.0) - (w * ((1 / 1260.0) - (w * ((1 / 1680.0) - (w * (1 / 1188.0))))))))) / x;
    }
}
