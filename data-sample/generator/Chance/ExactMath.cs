namespace PartsSignal.SampleShop.Chance;

/// <summary>
/// Logarithm and exponential from the four basic operations alone. The system's own differ in the last bit
/// between machines, and a sample that must repeat byte for byte cannot lean on them.
/// </summary>
internal static class ExactMath
{
    private const double Ln2 = 0.693147180559945309417232121458;
    private const double Sqrt2 = 1.41421356237309504880168872421;

    /// <summary>Natural logarithm of a positive, finite, normal number.</summary>
    public static double Log(double x)
    {
        if (!(x >= 2.2250738585072014e-308) || double.IsInfinity(x))
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, "positive, finite and normal");
        }

        long bits = BitConverter.DoubleToInt64Bits(x);
        int exponent = (int)((bits >> 52) & 0x7ff) - 1023;
        double mantissa = BitConverter.Int64BitsToDouble((bits & 0xfffffffffffff) | (1023L << 52));
        if (mantissa > Sqrt2)
        {
            mantissa /= 2;
            exponent++;
        }

        double s = (mantissa - 1) / (mantissa + 1);
        double square = s * s;
        double sum = 0;
        for (int k = 25; k >= 1; k -= 2)
        {
            sum = (sum * square) + (1.0 / k);
        }

        return (exponent * Ln2) + (2 * s * sum);
    }

    /// <summary>e to the power x; 0 below about -708, for what the sample needs as good as exact.</summary>
    public static double Exp(double x)
    {
        if (x < -708)
        {
            return 0;
        }

        if (!(x < 709))
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, "below 709");
        }

        int k = (int)Math.Floor((x / Ln2) + 0.5);
        double r = x - (k * Ln2);
        double sum = 1;
        for (int i = 16; i >= 1; i--)
        {
            sum = 1 + (r * sum / i);
        }

        return sum * BitConverter.Int64BitsToDouble((long)(k + 1023) << 52);
    }

    /// <summary>x to the power y, x at least 0.</summary>
    public static double Pow(double x, double y) => x <= 0 ? 0 : Exp(y * Log(x));
}
