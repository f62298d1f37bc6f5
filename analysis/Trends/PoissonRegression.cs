using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Trends;

/// <summary>
/// Log-linear regression of counts with an offset, by iteratively reweighted least squares (Nelder and Wedderburn
/// 1972). With a theta the working variance is that of the negative binomial with that size held fixed.
/// </summary>
internal static class PoissonRegression
{
    private const int MostRounds = 100;

    /// <summary>Fits the model.</summary>
    /// <param name="rows">Counts, exposures and terms.</param>
    /// <param name="theta">Size of a negative binomial, or null for a Poisson.</param>
    public static CountModel Fit(IReadOnlyList<CountRow> rows, double? theta = null)
    {
        if (rows.Sum(r => r.Count * r.Weight) <= 0)
        {
            return CountModel.None("every count is nought");
        }

        int terms = rows[0].Terms.Count;
        if (rows.Count < terms)
        {
            return CountModel.None("fewer months than terms");
        }

        double[] mean = [.. rows.Select(r => r.Count + 0.1)];
        double[]? coefficients = null;
        double deviance = double.PositiveInfinity;
        SymmetricSystem? information = null;
        for (int round = 0; round < MostRounds; round++)
        {
            (double[,] matrix, double[] right) = Normal(rows, mean, theta, terms);
            information = SymmetricSystem.Factor(matrix);
            if (information is null)
            {
                return CountModel.None("the terms cannot be told apart on these months");
            }

            double[] next = information.Solve(right);
            double[] moved = Means(rows, next);
            double now = TotalDeviance(rows, moved, theta);
            for (int half = 0; coefficients is not null && !(now <= deviance + 1e-9 * (1 + Math.Abs(deviance))) && half < 40; half++)
            {
                next = [.. next.Zip(coefficients, (a, b) => (a + b) / 2)];
                moved = Means(rows, next);
                now = TotalDeviance(rows, moved, theta);
            }

            bool settled = coefficients is not null && next.Zip(coefficients, (a, b) => Math.Abs(a - b)).Max() < 1e-10;
            (coefficients, mean, deviance) = (next, moved, now);
            if (settled)
            {
                return Finish(rows, coefficients, mean, deviance, theta);
            }
        }

        return CountModel.None("the fit did not settle: some season has no counts at all");
    }

    private static (double[,] Matrix, double[] Right) Normal(IReadOnlyList<CountRow> rows, double[] mean, double? theta, int terms)
    {
        double[,] matrix = new double[terms, terms];
        double[] right = new double[terms];
        for (int i = 0; i < rows.Count; i++)
        {
            CountRow row = rows[i];
            double weight = Weight(row, mean[i], theta);
            double working = Math.Log(mean[i] / row.Exposure) + (row.Count - mean[i]) / mean[i];
            for (int a = 0; a < terms; a++)
            {
                right[a] += weight * row.Terms[a] * working;
                for (int b = 0; b < terms; b++)
                {
                    matrix[a, b] += weight * row.Terms[a] * row.Terms[b];
                }
            }
        }

        return (matrix, right);
    }

    private static CountModel Finish(IReadOnlyList<CountRow> rows, double[] coefficients, double[] mean, double deviance, double? theta)
    {
        int terms = coefficients.Length;
        if (SymmetricSystem.Factor(Normal(rows, mean, theta, terms).Matrix) is not { } information)
        {
            return CountModel.None("the terms cannot be told apart on these months");
        }

        double[] errors = [.. Enumerable.Range(0, terms).Select(a => Math.Sqrt(information.InverseForm([.. Enumerable.Range(0, terms).Select(b => a == b ? 1.0 : 0)])))];
        double[] leverages = [.. rows.Select((r, i) => Weight(r, mean[i], theta) * information.InverseForm([.. r.Terms]))];
        double pearson = rows.Select((r, i) => r.Weight * (r.Count - mean[i]) * (r.Count - mean[i]) / (mean[i] + (theta is { } t ? mean[i] * mean[i] / t : 0))).Sum();
        int freedom = rows.Count(r => r.Weight > 0) - terms;
        double logLikelihood = rows.Select((r, i) => r.Weight * LogProbability(r.Count, mean[i], theta)).Sum();
        return new CountModel(coefficients, errors, mean, leverages, deviance, freedom > 0 ? pearson / freedom : null, logLikelihood, theta, null)
        {
            Information = information,
        };
    }

    private static double Weight(CountRow row, double mean, double? theta) => row.Weight * mean / (1 + (theta is { } t ? mean / t : 0));

    private static double[] Means(IReadOnlyList<CountRow> rows, double[] coefficients) =>
        [.. rows.Select(r => Math.Max(1e-300, r.Exposure * Math.Exp(Math.Clamp(r.Terms.Zip(coefficients, (t, c) => t * c).Sum(), -300, 300))))];

    private static double TotalDeviance(IReadOnlyList<CountRow> rows, double[] mean, double? theta) =>
        rows.Select((r, i) => r.Weight * Deviance(r.Count, mean[i], theta)).Sum();

    private static double Deviance(double count, double mean, double? theta)
    {
        double own = count > 0 ? count * Math.Log(count / mean) : 0;
        return 2 * (theta is { } t ? own - (count + t) * Math.Log((count + t) / (mean + t)) : own - (count - mean));
    }

    private static double LogProbability(double count, double mean, double? theta) => theta is { } t
        ? GammaFunction.Log(count + t) - GammaFunction.Log(t) - GammaFunction.Log(count + 1) + t * Math.Log(t / (t + mean)) + count * Math.Log(mean / (t + mean))
        : count * Math.Log(mean) - mean - GammaFunction.Log(count + 1);
}
