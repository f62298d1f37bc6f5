namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>Inverts distribution functions: Newton steps kept inside a bracket that only shrinks.</summary>
internal static class MonotoneQuantile
{
    /// <summary>
    /// Solves g(u) = 0 for an increasing g. Bisection takes over whenever a Newton step would leave the bracket, so it
    /// ends where no double lies between the two sides of the root.
    /// </summary>
    /// <param name="g">Value and slope at u.</param>
    /// <param name="start">First guess; any finite number will do.</param>
    public static double Solve(Func<double, (double Value, double Slope)> g, double start)
    {
        double u = start;
        double lower = double.NegativeInfinity;
        double upper = double.PositiveInfinity;
        double stride = 1;
        for (int i = 0; i < 400; i++)
        {
            (double value, double slope) = g(u);
            if (value == 0)
            {
                return u;
            }

            if (value < 0)
            {
                lower = u;
            }
            else
            {
                upper = u;
            }

            double next = u - (value / slope);
            bool bounded = double.IsFinite(lower) && double.IsFinite(upper);
            if (!bounded && !(double.IsFinite(next) && Math.Abs(next - u) <= stride))
            {
                next = value < 0 ? u + stride : u - stride;
                stride *= 2;
            }
            else if (bounded && !(next > lower && next < upper))
            {
                next = lower + (0.5 * (upper - lower));
            }

            if (Math.Abs(next - u) <= 1e-16 * Math.Abs(u) || next == lower || next == upper)
            {
                return next;
            }

            u = next;
        }

        return u;
    }

    /// <summary>Smallest whole number k &gt;= 0 whose distribution function reaches p, within 64 units in the last place.</summary>
    public static long Smallest(Func<long, double> cdf, double p, double guess)
    {
        double target = p * (1 - (64 * 2.220446049250313e-16));
        long upper = Math.Max(0, (long)Math.Min(guess, long.MaxValue / 4.0));
        long stride = 1 + (upper / 64);
        while (cdf(upper) < target)
        {
            upper += stride;
            stride *= 2;
        }

        long lower = upper;
        stride = 1 + (upper / 64);
        while (lower > 0 && cdf(lower) >= target)
        {
            lower = Math.Max(0, lower - stride);
            stride *= 2;
        }

        if (cdf(lower) >= target)
        {
            return lower;
        }

        while (upper - lower > 1)
        {
            long middle = lower + ((upper - lower) / 2);
            if (cdf(middle) >= target)
            {
                upper = middle;
            }
            else
            {
                lower = middle;
            }
        }

        return upper;
    }
}
