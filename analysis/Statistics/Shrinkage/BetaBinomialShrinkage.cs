using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Shrinkage;

/// <summary>
/// Shares of one event in groups that are alike (one component in the families of a type), pulled towards what the groups
/// have in common. True shares scatter between groups as Beta(m M, (1 - m) M), counts within a group as binomial (Skellam
/// 1948). Each event has a scatter of its own: a component that families need equally often is pulled together, one in which
/// they differ is left apart.
/// </summary>
/// <remarks>
/// The prior is an estimate too, so m and M run over a grid, each point weighted by its marginal likelihood (Morris 1983
/// showed that plugging one point in gives intervals too narrow); the mixture of posteriors is replaced by the beta
/// distribution of the same mean and variance. Scatter is c = 1 / sqrt(m M), about the coefficient of variation of the
/// shares of a rare event, weighted a priori as 1 / (1 + c^2); m is flat in its log odds. Groups need not scatter as a beta
/// distribution, and few of them do not show it: the variance is taken 1 + 1.5 / groups times as large, by which the limits
/// hold the later shares of groups that scatter log-normally or evenly. Events are shrunk one at a time, so the shrunk
/// shares of a group need not add up to 1.
/// </remarks>
internal static class BetaBinomialShrinkage
{
    private static readonly double[] Scatters = [0.03, 0.1, 0.2, 0.3, 0.45, 0.65, 0.9, 1.3, 1.9, 2.8, 4];
    private const double Misfit = 1.5;
    private const double LeastSize = 1e-3;
    private const int MeanSteps = 4;
    private const double MeanReach = 3;

    /// <summary>The shrunk share of every group, in order, 0 to 1; missing with a reason where no group has trials.</summary>
    /// <param name="groups">The groups.</param>
    /// <param name="confidence">Of the intervals, above 0, below 1.</param>
    public static IReadOnlyList<Estimate> Shrink(IReadOnlyList<ShareGroup> groups, double confidence = 0.95)
    {
        ShareGroup[] used = [.. groups.Where(g => g.Trials > 0)];
        if (used.Length == 0)
        {
            return [.. groups.Select(_ => Estimate.None("no calls"))];
        }

        (double A, double B, double Weight)[] grid = Grid(used);
        double tail = (1 - confidence) / 2, wider = 1 + (Misfit / used.Length);
        return [.. groups.Select(g => Mixed(g, grid, tail, wider))];
    }

    private static Estimate Mixed(ShareGroup group, (double A, double B, double Weight)[] grid, double tail, double wider)
    {
        double mean = 0, square = 0;
        foreach ((double priorA, double priorB, double weight) in grid)
        {
            double a = priorA + group.Events, all = priorA + priorB + group.Trials;
            mean += weight * a / all;
            square += weight * a * (a + 1) / (all * (all + 1));
        }

        double size = Math.Max(LeastSize, (mean * (1 - mean) / (wider * (square - (mean * mean)))) - 1);
        var matched = new BetaDistribution(mean * size, (1 - mean) * size);
        return Estimate.From(mean, Math.Min(matched.Quantile(tail), mean), Math.Max(matched.Quantile(1 - tail), mean));
    }

    private static (double A, double B, double Weight)[] Grid(ShareGroup[] groups)
    {
        double events = groups.Sum(g => (double)g.Events), trials = groups.Sum(g => (double)g.Trials);
        double pooled = (events + 0.5) / (trials + 1);
        double logit = Math.Log(pooled / (1 - pooled));
        var points = new List<(double A, double B, double Log)>();
        for (int s = 0; s < Scatters.Length; s++)
        {
            double scatter = Scatters[s] * Scatters[s];
            double width = Scatters[s] - (s == 0 ? 0 : Scatters[s - 1]);
            // how far the mean may lie from the pooled share, in its log odds
            double error = Math.Sqrt((1 / ((events + 0.5) * (1 - pooled))) + (scatter / groups.Length));
            double prior = Math.Log(width * error / (1 + scatter));
            for (int m = -MeanSteps; m <= MeanSteps; m++)
            {
                double mean = 1 / (1 + Math.Exp(-logit - (MeanReach * error * m / MeanSteps)));
                double a = 1 / scatter, b = a * (1 - mean) / mean;
                points.Add((a, b, prior + groups.Sum(g => LogMarginal(g, a, b))));
            }
        }

        double highest = points.Max(p => p.Log);
        double sum = points.Sum(p => Math.Exp(p.Log - highest));
        return [.. points.Select(p => (p.A, p.B, Math.Exp(p.Log - highest) / sum)).Where(p => p.Item3 > 1e-12)];
    }

    // log of B(a + x, b + n - x) / B(a, b): the binomial coefficient is the same at every point.
    private static double LogMarginal(ShareGroup group, double a, double b) =>
        Rise(a, group.Events) + Rise(b, group.Trials - group.Events) - Rise(a + b, group.Trials);

    // log of the gamma function at x + n less that at x
    private static double Rise(double x, long n)
    {
        if (n > 12)
        {
            return GammaFunction.Log(x + n) - GammaFunction.Log(x);
        }

        double product = 1;
        for (int j = 0; j < n; j++)
        {
            product *= x + j;
        }

        return Math.Log(product);
    }
}

/// <summary>Events of one group among its trials.</summary>
/// <param name="Events">0 to <paramref name="Trials"/>.</param>
/// <param name="Trials">0 or more; with 0 the group says nothing about the others and its answer is the common one.</param>
internal sealed record ShareGroup(long Events, long Trials);
