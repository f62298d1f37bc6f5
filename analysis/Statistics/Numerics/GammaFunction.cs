namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>The gamma function, its logarithm and their derivatives, for positive arguments.</summary>
internal static class GammaFunction
{
    internal const double HalfLogTwoPi = 0.918938533204672741780329736406;

    private const double LanczosShift = 10.900511;
    private const double TwoRootEOverPi = 1.8603827342052657173362492472666631120594218414085755;
    private static readonly double[] Lanczos =
    [
        2.48574089138753565546e-5, 1.05142378581721974210, -3.45687097222016235469, 4.51227709466894823700, -2.98285225323576655721,
        1.05639711577126713077, -1.95428773191645869583e-1, 1.70970543404441224307e-2, -5.71926117404305781283e-4,
        4.63399473359905636708e-6, -2.71994908488607703910e-9,
    ];

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

    /// <summary>Gamma(x) for x of at least 0.5, by Lanczos' approximation with the coefficients of Pugh (2004), to 15 digits.</summary>
    public static double Value(double x)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(x, 0.5);
        double sum = Lanczos[0];
        for (int i = 1; i < Lanczos.Length; i++)
        {
            sum += Lanczos[i] / (x + i - 1.0);
        }

        return sum * TwoRootEOverPi * Math.Pow((x - 0.5 + LanczosShift) / Math.E, x - 0.5);
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
