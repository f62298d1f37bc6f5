using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Standard errors of a doubly truncated distribution from the curvature of its log likelihood
/// sum n_j log f_j - sum log F_i at the maximum: in the logs of the masses the information is
/// d_jk sum_i J_ij f_j/F_i - f_j f_k sum_i J_ij J_ik/F_i^2 (Emura, Konno and Michimae 2015). Neighbouring ages are taken
/// together so that the work does not grow with the failures.
/// </summary>
internal static class TruncatedVariance
{
    private const int MostCells = 100;

    /// <summary>Standard error of the share failed by each age; empty where the curvature does not tell.</summary>
    public static double[] StandardErrors(LogWindows windows, double[] mass)
    {
        int cells = Math.Min(mass.Length, MostCells);
        int Cell(int age) => (int)((long)age * cells / mass.Length);
        double[] share = new double[cells];
        for (int j = 0; j < mass.Length; j++)
        {
            share[Cell(j)] += mass[j];
        }

        if (cells < 2 || SymmetricSystem.Factor(Information(share, windows.Runs.Select(r => (Cell(r.First), Cell(r.Last))))) is not { } information)
        {
            return [];
        }

        double[] errors = [.. Enumerable.Range(0, cells).Select(t => Math.Sqrt(information.InverseForm(Gradient(share, t))))];
        return [.. Enumerable.Range(0, mass.Length).Select(j => errors[Cell(j)])];
    }

    // F(t) as a function of the logs of the masses, which need not add up to 1: f_k (1{k <= t} - F(t)).
    private static double[] Gradient(double[] share, int last)
    {
        double failed = share.Take(last + 1).Sum() / share.Sum();
        return [.. share.Select((f, k) => f * ((k <= last ? 1 : 0) - failed))];
    }

    private static double[,] Information(double[] share, IEnumerable<(int First, int Last)> runs)
    {
        int n = share.Length;
        double[] upTo = new double[n + 1];
        for (int j = 0; j < n; j++)
        {
            upTo[j + 1] = upTo[j] + share[j];
        }

        double[] cover = new double[n + 1];
        double[,] pairs = new double[n + 1, n + 1];
        foreach ((int first, int last) in runs)
        {
            double inverse = 1 / (upTo[last + 1] - upTo[first]);
            cover[first] += inverse;
            cover[last + 1] -= inverse;
            pairs[first + 1, last] += inverse * inverse;
        }

        // pairs[j + 1, k]: windows that begin at j or before and end at k or after.
        for (int j = 1; j <= n; j++)
        {
            for (int k = n - 1; k >= 0; k--)
            {
                pairs[j, k] += pairs[j - 1, k] + pairs[j, k + 1] - pairs[j - 1, k + 1];
            }
        }

        double[,] matrix = new double[n, n];
        double covered = 0, trace = 0;
        for (int j = 0; j < n; j++)
        {
            covered += cover[j];
            matrix[j, j] += share[j] * covered;
            trace += share[j] * covered;
            for (int k = 0; k < n; k++)
            {
                matrix[j, k] -= share[j] * share[k] * pairs[Math.Min(j, k) + 1, Math.Max(j, k)];
            }
        }

        // Masses are known up to a factor only; fixing it changes no share.
        for (int j = 0; j < n; j++)
        {
            for (int k = 0; k < n; k++)
            {
                matrix[j, k] += trace / n / n;
            }
        }

        return matrix;
    }
}
