namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>Where a search ended.</summary>
/// <param name="Point">The point.</param>
/// <param name="Value">The function there.</param>
/// <param name="Converged">False: the steps ran out first.</param>
internal sealed record SimplexMinimum(IReadOnlyList<double> Point, double Value, bool Converged);

/// <summary>
/// Downhill simplex (Nelder &amp; Mead 1965) for a handful of parameters, restarted once at its own answer so that a
/// simplex that has collapsed cannot pass for a minimum. Give it log parameters where they must stay positive.
/// NaN and infinite values count as worse than any number.
/// </summary>
internal static class NelderMead
{
    /// <summary>Searches from a starting point.</summary>
    /// <param name="f">The function.</param>
    /// <param name="start">First corner.</param>
    /// <param name="step">Length of the first simplex's edges.</param>
    /// <param name="tolerance">Size of the last simplex, in the parameters' own unit.</param>
    /// <param name="mostSteps">Steps allowed in each of the two searches.</param>
    public static SimplexMinimum Search(
        Func<ReadOnlySpan<double>, double> f, ReadOnlySpan<double> start, double step = 0.5, double tolerance = 1e-10, int mostSteps = 5000)
    {
        SimplexMinimum first = Once(f, start, step, tolerance, mostSteps);
        return Once(f, [.. first.Point], step / 10, tolerance, mostSteps);
    }

    private static SimplexMinimum Once(Func<ReadOnlySpan<double>, double> f, ReadOnlySpan<double> start, double step, double tolerance, int mostSteps)
    {
        int n = start.Length;
        double[][] corners = new double[n + 1][];
        double[] values = new double[n + 1];
        for (int i = 0; i <= n; i++)
        {
            corners[i] = start.ToArray();
            if (i < n)
            {
                corners[i][i] += step;
            }

            values[i] = At(f, corners[i]);
        }

        for (int steps = 0; steps < mostSteps; steps++)
        {
            Array.Sort(values, corners);
            if (Size(corners) <= tolerance)
            {
                return new SimplexMinimum(corners[0], values[0], true);
            }

            Move(f, corners, values);
        }

        Array.Sort(values, corners);
        return new SimplexMinimum(corners[0], values[0], false);
    }

    private static void Move(Func<ReadOnlySpan<double>, double> f, double[][] corners, double[] values)
    {
        int n = corners.Length - 1;
        double[] center = new double[n];
        for (int j = 0; j < n; j++)
        {
            for (int i = 0; i < n; i++)
            {
                center[j] += corners[i][j] / n;
            }
        }

        double[] reflected = Along(center, corners[n], -1);
        double value = At(f, reflected);
        if (value < values[0])
        {
            double[] further = Along(center, corners[n], -2);
            double there = At(f, further);
            (corners[n], values[n]) = there < value ? (further, there) : (reflected, value);
            return;
        }

        if (value < values[n - 1])
        {
            (corners[n], values[n]) = (reflected, value);
            return;
        }

        double[] inside = Along(center, corners[n], value < values[n] ? -0.5 : 0.5);
        double within = At(f, inside);
        if (within < Math.Min(value, values[n]))
        {
            (corners[n], values[n]) = (inside, within);
            return;
        }

        for (int i = 1; i <= n; i++)
        {
            corners[i] = Along(corners[0], corners[i], 0.5);
            values[i] = At(f, corners[i]);
        }
    }

    private static double[] Along(double[] center, double[] corner, double share)
    {
        double[] point = new double[center.Length];
        for (int j = 0; j < point.Length; j++)
        {
            point[j] = center[j] + (share * (corner[j] - center[j]));
        }

        return point;
    }

    private static double Size(double[][] corners)
    {
        double size = 0;
        for (int i = 1; i < corners.Length; i++)
        {
            for (int j = 0; j < corners[0].Length; j++)
            {
                size = Math.Max(size, Math.Abs(corners[i][j] - corners[0][j]));
            }
        }

        return size;
    }

    private static double At(Func<ReadOnlySpan<double>, double> f, double[] point)
    {
        double value = f(point);
        return double.IsFinite(value) ? value : double.MaxValue;
    }
}
