namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Lowest point of a smooth convex function by limited-memory quasi-Newton steps (Liu and Nocedal 1989), started from a
/// diagonal estimate of the curvature and halving a step that does not lower the value enough.
/// </summary>
internal static class QuasiNewton
{
    private const int Memory = 8;

    // Facts of one row overlap, so the diagonal overstates a first step.
    private const double FirstScale = 0.15;

    /// <summary>Function to be minimised: returns the value, writes the gradient.</summary>
    public delegate double Function(double[] at, double[] gradient);

    /// <summary>Moves <paramref name="at"/> downhill.</summary>
    /// <param name="function">The function.</param>
    /// <param name="at">Start; holds the result afterwards.</param>
    /// <param name="inverseCurvature">Diagonal estimate of the inverse second derivative, all above 0.</param>
    /// <param name="steps">Most steps.</param>
    /// <param name="tolerance">Stops when a step lowers the value by less than this share of it.</param>
    /// <returns>The value reached.</returns>
    public static double Minimise(Function function, double[] at, double[] inverseCurvature, int steps, double tolerance)
    {
        int n = at.Length;
        double[] gradient = new double[n], next = new double[n], nextGradient = new double[n];
        var pairs = new LinkedList<(double[] Moved, double[] Bent, double Scale)>();
        double value = function(at, gradient);
        for (int step = 0; step < steps; step++)
        {
            double[] direction = Direction(gradient, inverseCurvature, pairs);
            double slope = VectorOps.Dot(direction, gradient), length = 1, reached = value;
            bool lower = false;
            for (int halvings = 0; halvings < 20 && !lower; halvings++, length /= 2)
            {
                for (int j = 0; j < n; j++)
                {
                    next[j] = at[j] + length * direction[j];
                }

                reached = function(next, nextGradient);
                lower = reached <= value + 1e-4 * length * slope;
            }

            if (!lower)
            {
                break;
            }

            Remember(pairs, at, next, gradient, nextGradient);
            double gained = value - reached;
            (value, gradient, nextGradient) = (reached, nextGradient, gradient);
            next.CopyTo(at, 0);
            if (gained < tolerance * Math.Abs(value))
            {
                break;
            }
        }

        return value;
    }

    private static void Remember(LinkedList<(double[], double[], double)> pairs, double[] at, double[] next, double[] gradient, double[] nextGradient)
    {
        double[] moved = new double[at.Length], bent = new double[at.Length];
        for (int j = 0; j < at.Length; j++)
        {
            (moved[j], bent[j]) = (next[j] - at[j], nextGradient[j] - gradient[j]);
        }

        double product = VectorOps.Dot(moved, bent);
        if (product > 1e-12)
        {
            pairs.AddFirst((moved, bent, 1 / product));
        }

        if (pairs.Count > Memory)
        {
            pairs.RemoveLast();
        }
    }

    private static double[] Direction(double[] gradient, double[] inverseCurvature, LinkedList<(double[] Moved, double[] Bent, double Scale)> pairs)
    {
        double[] q = [.. gradient];
        var kept = new List<double>(pairs.Count);
        foreach ((double[] moved, double[] bent, double scale) in pairs)
        {
            double a = scale * VectorOps.Dot(moved, q);
            kept.Add(a);
            VectorOps.AddScaled(q, bent, -a);
        }

        double scale0 = pairs.First is { } latest ? Scale(latest.Value.Bent, latest.Value.Scale, inverseCurvature) : FirstScale;
        for (int j = 0; j < q.Length; j++)
        {
            q[j] *= scale0 * inverseCurvature[j];
        }

        int place = kept.Count - 1;
        for (var pair = pairs.Last; pair is not null; pair = pair.Previous, place--)
        {
            VectorOps.AddScaled(q, pair.Value.Moved, kept[place] - pair.Value.Scale * VectorOps.Dot(pair.Value.Bent, q));
        }

        for (int j = 0; j < q.Length; j++)
        {
            q[j] = -q[j];
        }

        return q;
    }

    private static double Scale(double[] bent, double scale, double[] inverseCurvature)
    {
        double sum = 0;
        for (int j = 0; j < bent.Length; j++)
        {
            sum += bent[j] * bent[j] * inverseCurvature[j];
        }

        return 1 / (scale * sum);
    }
}
