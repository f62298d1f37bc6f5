using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Trends;

/// <summary>
/// Log-linear regression of counts that scatter more than Poisson's: variance m + m^2/theta, coefficients and theta
/// by maximum likelihood in turn (Lawless 1987; Venables and Ripley 2002). Where counts scatter no more than
/// Poisson's, theta has no finite maximum and the Poisson fit is given.
/// </summary>
internal static class NegativeBinomialRegression
{
    private const double SmallestLogTheta = -6;
    private const double LargestLogTheta = 14;

    /// <summary>Fits the model.</summary>
    public static CountModel Fit(IReadOnlyList<CountRow> rows)
    {
        CountModel model = PoissonRegression.Fit(rows);
        double last = double.NaN;
        for (int round = 0; round < 200 && model.Missing is null; round++)
        {
            if (Theta(rows, model.Fitted) is not { } theta)
            {
                return PoissonRegression.Fit(rows);
            }

            model = PoissonRegression.Fit(rows, theta);
            if (Math.Abs(theta - last) <= 1e-9 * theta)
            {
                return model;
            }

            last = theta;
        }

        return model.Missing is null ? CountModel.None("the scatter did not settle") : model;
    }

    private static double? Theta(IReadOnlyList<CountRow> rows, IReadOnlyList<double> mean)
    {
        double Score(double log)
        {
            double t = Math.Exp(log);
            double sum = 0;
            for (int i = 0; i < rows.Count; i++)
            {
                double y = rows[i].Count;
                sum += rows[i].Weight * (GammaFunction.Digamma(t + y) - GammaFunction.Digamma(t) + Math.Log(t) + 1 - Math.Log(t + mean[i]) - (y + t) / (mean[i] + t));
            }

            return sum;
        }

        return RootFinder.Find(Score, SmallestLogTheta, LargestLogTheta) is { } root ? Math.Exp(root) : null;
    }
}
