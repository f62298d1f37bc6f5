using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>
/// Mean number of counts up to an alarm of a Poisson cumulative sum, by the Markov chain of its states (Brook and
/// Evans 1972). Exact when reference and limit are multiples of the lattice step.
/// </summary>
internal static class CusumRunLength
{
    /// <summary>The mean run length from a sum of nought.</summary>
    /// <param name="reference">k, rounded to the lattice.</param>
    /// <param name="limit">h, rounded up to the lattice.</param>
    /// <param name="mean">Mean count.</param>
    /// <param name="steps">Lattice points per unit, 1 or more.</param>
    public static double Mean(double reference, double limit, double mean, int steps = 1)
    {
        int k = (int)Math.Round(reference * steps);
        int states = Math.Max(1, (int)Math.Ceiling(limit * steps - 1e-9));
        var counts = new PoissonDistribution(mean);
        double[,] matrix = new double[states, states + 1];
        for (int from = 0; from < states; from++)
        {
            for (int to = 0; to < states; to++)
            {
                double chance = to == 0 ? counts.Cdf((long)Math.Floor((double)(k - from) / steps)) : Chance(counts, to - from + k, steps);
                matrix[from, to] = (from == to ? 1 : 0) - chance;
            }

            matrix[from, states] = 1;
        }

        return Solve(matrix)[0];
    }

    /// <summary>The smallest limit on the lattice whose mean run length at the usual mean is at least as long as asked.</summary>
    public static double Limit(double reference, double usual, double longest, int steps = 2, double most = 60)
    {
        int low = 1;
        int high = (int)(most * steps);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Mean(reference, (double)middle / steps, usual, steps) >= longest ? (low, middle) : (middle + 1, high);
        }

        return (double)low / steps;
    }

    private static double Chance(PoissonDistribution counts, int scaled, int steps) =>
        scaled >= 0 && scaled % steps == 0 ? counts.Pmf(scaled / steps) : 0;

    private static double[] Solve(double[,] m)
    {
        int n = m.GetLength(0);
        for (int pivot = 0; pivot < n; pivot++)
        {
            int best = pivot;
            for (int row = pivot + 1; row < n; row++)
            {
                best = Math.Abs(m[row, pivot]) > Math.Abs(m[best, pivot]) ? row : best;
            }

            for (int column = pivot; column <= n; column++)
            {
                (m[pivot, column], m[best, column]) = (m[best, column], m[pivot, column]);
            }

            for (int row = pivot + 1; row < n; row++)
            {
                double factor = m[row, pivot] / m[pivot, pivot];
                for (int column = pivot; factor != 0 && column <= n; column++)
                {
                    m[row, column] -= factor * m[pivot, column];
                }
            }
        }

        double[] x = new double[n];
        for (int row = n - 1; row >= 0; row--)
        {
            double sum = m[row, n];
            for (int column = row + 1; column < n; column++)
            {
                sum -= m[row, column] * x[column];
            }

            x[row] = sum / m[row, row];
        }

        return x;
    }
}
