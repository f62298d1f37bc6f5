namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>Solves a small symmetric positive definite system by Cholesky's factors.</summary>
internal sealed class SymmetricSystem
{
    private readonly double[,] _lower;

    private SymmetricSystem(double[,] lower) => _lower = lower;

    /// <summary>Factors the matrix; null when it is not positive definite, that is when columns depend on each other.</summary>
    public static SymmetricSystem? Factor(double[,] matrix)
    {
        int n = matrix.GetLength(0);
        double[,] lower = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[i, j];
                for (int k = 0; k < j; k++)
                {
                    sum -= lower[i, k] * lower[j, k];
                }

                if (i == j && !(sum > 1e-11 * matrix[i, i]))
                {
                    return null;
                }

                lower[i, j] = i == j ? Math.Sqrt(sum) : sum / lower[j, j];
            }
        }

        return new SymmetricSystem(lower);
    }

    /// <summary>The solution for one right-hand side.</summary>
    public double[] Solve(double[] right)
    {
        double[] x = Forward(right);
        for (int i = x.Length - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < x.Length; k++)
            {
                x[i] -= _lower[k, i] * x[k];
            }

            x[i] /= _lower[i, i];
        }

        return x;
    }

    /// <summary>v' M^-1 v.</summary>
    public double InverseForm(double[] v) => Forward(v).Sum(y => y * y);

    private double[] Forward(double[] right)
    {
        double[] y = [.. right];
        for (int i = 0; i < y.Length; i++)
        {
            for (int k = 0; k < i; k++)
            {
                y[i] -= _lower[i, k] * y[k];
            }

            y[i] /= _lower[i, i];
        }

        return y;
    }
}
