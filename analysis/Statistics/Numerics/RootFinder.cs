namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>Roots and minima of a function of one variable (Brent 1973).</summary>
internal static class RootFinder
{
    /// <summary>Where a continuous function changes sign between two ends; null when it has the same sign at both.</summary>
    /// <param name="f">The function.</param>
    /// <param name="lower">One end.</param>
    /// <param name="upper">The other end.</param>
    /// <param name="tolerance">Absolute error allowed in x, beside rounding.</param>
    public static double? Find(Func<double, double> f, double lower, double upper, double tolerance = 1e-12)
    {
        double a = lower, b = upper, fa = f(a), fb = f(b);
        if (fa == 0 || fb == 0)
        {
            return fa == 0 ? a : b;
        }

        if (!(Math.Sign(fa) * Math.Sign(fb) < 0))
        {
            return null;
        }

        double c = a, fc = fa, step = b - a, before = step;
        for (int i = 0; i < 500; i++)
        {
            if (Math.Abs(fc) < Math.Abs(fb))
            {
                (a, b, c) = (b, c, b);
                (fa, fb, fc) = (fb, fc, fb);
            }

            double close = (2 * double.Epsilon) + (4e-16 * Math.Abs(b)) + (0.5 * tolerance);
            double half = 0.5 * (c - b);
            if (Math.Abs(half) <= close || fb == 0)
            {
                return b;
            }

            (double p, double q) = Interpolate(a, b, c, fa, fb, fc);
            bool accept = Math.Abs(before) >= close && Math.Abs(fa) > Math.Abs(fb)
                && 2 * p < Math.Min((3 * half * q) - Math.Abs(close * q), Math.Abs(before * q));
            (before, step) = accept ? (step, p / q) : (half, half);
            (a, fa) = (b, fb);
            b += Math.Abs(step) > close ? step : Math.Sign(half) * close;
            fb = f(b);
            if (Math.Sign(fb) == Math.Sign(fc))
            {
                (c, fc) = (a, fa);
                before = step = b - a;
            }
        }

        return b;
    }

    private static (double P, double Q) Interpolate(double a, double b, double c, double fa, double fb, double fc)
    {
        double s = fb / fa;
        double p, q;
        if (a == c)
        {
            p = (c - b) * s;
            q = 1 - s;
        }
        else
        {
            double r = fb / fc;
            double t = fa / fc;
            p = s * (((c - b) * t * (t - r)) - ((b - a) * (r - 1)));
            q = (t - 1) * (r - 1) * (s - 1);
        }

        return p > 0 ? (p, -q) : (-p, q);
    }
}
