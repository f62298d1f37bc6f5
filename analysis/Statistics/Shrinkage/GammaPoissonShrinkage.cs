using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Shrinkage;

/// <summary>
/// Shrunk rates with intervals that know that the prior itself is an estimate (Morris 1983 showed that plugging it in
/// gives intervals too narrow). The prior's mean and scatter run over a grid, each point weighted by its marginal
/// likelihood; the mixture of posteriors is replaced by the gamma distribution of the same mean and variance.
/// </summary>
/// <remarks>
/// Scatter is the coefficient of variation c of true rates between groups, weighted a priori as 1 / (1 + c^2), which
/// keeps the grid proper where the groups do not differ at all. The mean is flat in its logarithm. Groups need not scatter
/// as a gamma distribution, and few of them do not show it: the variance is taken 1 + 2.5 / groups times as large, by which
/// the limits hold the rates of groups that scatter evenly.
/// </remarks>
internal static class GammaPoissonShrinkage
{
    private static readonly double[] Scatters =
        [0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.75, 0.9, 1.1, 1.3, 1.6, 2, 2.5, 3.2, 4];

    // The fit only places the grid, so its last digits are not needed.
    private const double Rough = 1e-3;
    private const double Misfit = 2.5;
    private const int MeanSteps = 6;
    private const double MeanReach = 3.5;

    /// <summary>The shrunk rate of every group, in order; missing with a reason where no group has exposure.</summary>
    public static IReadOnlyList<Estimate> Shrink(IReadOnlyList<CountGroup> groups, double confidence = 0.95)
    {
        if (GammaPoissonFit.From(groups, Rough) is not { } fit)
        {
            return [.. groups.Select(_ => Estimate.None("no exposure"))];
        }

        CountGroup[] used = [.. groups.Where(g => g.Exposure > 0)];
        bool weak = fit.Basis == PriorBasis.WeakPrior;
        (double Shape, double Mean, double Weight)[] grid = weak ? [(fit.Prior!.Shape, fit.Mean, 1)] : Grid(used, fit);
        double tail = (1 - confidence) / 2, wider = weak ? 1 : 1 + (Misfit / used.Length);
        return [.. groups.Select(g => Mixed(g, grid, tail, wider))];
    }

    private static Estimate Mixed(CountGroup group, (double Shape, double Mean, double Weight)[] grid, double tail, double wider)
    {
        double mean = 0, square = 0;
        foreach ((double shape, double center, double weight) in grid)
        {
            double a = shape + group.Events, b = (shape / center) + group.Exposure;
            mean += weight * a / b;
            square += weight * a * (a + 1) / (b * b);
        }

        double variance = wider * (square - (mean * mean));
        var matched = new GammaDistribution(mean * mean / variance, mean / variance);
        return Estimate.From(mean, Math.Min(matched.Quantile(tail), mean), Math.Max(matched.Quantile(1 - tail), mean));
    }

    private static (double Shape, double Mean, double Weight)[] Grid(CountGroup[] groups, GammaPoissonFit fit)
    {
        double events = groups.Sum(g => g.Events);
        double seen = 1 / (fit.Prior?.Shape ?? double.PositiveInfinity);
        double error = Math.Sqrt((1 / events) + (Math.Max(seen, 0.04) / groups.Length));
        var points = new List<(double Shape, double Mean, double Log)>();
        for (int s = 0; s < Scatters.Length; s++)
        {
            double width = s == 0 ? Scatters[1] - Scatters[0] : Scatters[s] - Scatters[s - 1];
            double prior = Math.Log(width / (1 + (Scatters[s] * Scatters[s])));
            double shape = 1 / (Scatters[s] * Scatters[s]);
            prior += groups.Sum(g => GammaFunction.Log(shape + g.Events) - GammaFunction.Log(shape));
            for (int m = -MeanSteps; m <= MeanSteps; m++)
            {
                double mean = fit.Mean * Math.Exp(MeanReach * error * m / MeanSteps);
                points.Add((shape, mean, prior + MeanTerms(groups, shape, mean)));
            }
        }

        double highest = points.Max(p => p.Log);
        double sum = points.Sum(p => Math.Exp(p.Log - highest));
        return [.. points.Select(p => (p.Shape, p.Mean, Math.Exp(p.Log - highest) / sum))];
    }

    // What the negative-binomial log likelihood owes to the mean; the rest is the same for every mean of one shape.
    private static double MeanTerms(CountGroup[] groups, double shape, double mean)
    {
        double sum = 0;
        foreach (CountGroup group in groups)
        {
            double expected = mean * group.Exposure, all = shape + expected;
            sum += (shape * Math.Log(shape / all)) + (group.Events * Math.Log(expected / all));
        }

        return sum;
    }
}
