using System.Runtime.CompilerServices;
using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Shrinkage;

/// <summary>
/// Shares of components that scatter between families as a Dirichlet distribution; its parameters by Minka's (2000)
/// fixed point. A family without jobs gets the common shares.
/// </summary>
/// <param name="Alpha">Parameter per component, above 0.</param>
/// <param name="LogLikelihood">Without the multinomial coefficients.</param>
/// <param name="Converged">False: the steps ran out, as they do where families scatter no more than chance.</param>
internal sealed record DirichletMultinomial(IReadOnlyList<double> Alpha, double LogLikelihood, bool Converged)
{
    /// <summary>Smallest parameter: a component that no family has seen keeps a trace of chance.</summary>
    public const double Floor = 1e-3;

    // A sum of parameters beyond this is a prior worth more jobs than any shop has: pooled for all purposes.
    private const double LargestSum = 1e5;

    /// <summary>Sum of the parameters: the prior is worth so many jobs.</summary>
    public double Sum { get; } = Alpha.Sum();

    /// <summary>Fits counts; null where all are zero.</summary>
    /// <param name="counts">A row per family, a column per component.</param>
    /// <param name="mostSteps">Steps allowed.</param>
    public static DirichletMultinomial? Fit(IReadOnlyList<IReadOnlyList<long>> counts, int mostSteps = 20000)
    {
        int parts = counts.Count == 0 ? 0 : counts[0].Count;
        double all = counts.Sum(r => (double)r.Sum());
        if (all == 0)
        {
            return null;
        }

        // psi(a + n) - psi(a) = sum over j < n of 1 / (a + j): count once how many rows reach each j.
        int[][] reach = [.. Enumerable.Range(0, parts).Select(k => Reach(counts.Select(r => r[k])))];
        int[] total = Reach(counts.Select(r => r.Sum()));
        double[] alpha = [.. Enumerable.Range(0, parts).Select(k => Math.Max(Floor, counts.Sum(r => (double)r[k]) / all * parts))];
        bool converged = false;
        for (int step = 0; step < mostSteps && !converged; step++)
        {
            double sum = alpha.Sum();
            double below = Slope(total, sum);
            double change = 0;
            for (int k = 0; k < parts; k++)
            {
                double next = Math.Max(Floor, alpha[k] * Slope(reach[k], alpha[k]) / below);
                change = Math.Max(change, Math.Abs(next - alpha[k]) / alpha[k]);
                alpha[k] = next;
            }

            converged = change < 1e-11;
            if (alpha.Sum() > LargestSum)
            {
                break;
            }
        }

        return new DirichletMultinomial(alpha, LogLikelihoodAt(counts, alpha), converged);
    }

    /// <summary>
    /// Share of one component in one family after its own counts: mean and the interval of the Beta margin, widened to
    /// hold the mean where next to all of the mass sits at 0 or 1 (a component nobody has seen).
    /// </summary>
    /// <param name="component">Index of the component.</param>
    /// <param name="count">Jobs of the family that needed it.</param>
    /// <param name="jobs">Jobs of the family.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public Estimate Share(int component, long count, long jobs, double confidence = 0.95)
    {
        double a = count + Alpha[component];
        double b = jobs + Sum - a;
        if (!(b > 1e-9))
        {
            return Estimate.None("only one component");
        }

        var beta = new BetaDistribution(a, b);
        double tail = (1 - confidence) / 2;
        return Estimate.From(beta.Mean, Math.Min(beta.Quantile(tail), beta.Mean), Math.Max(beta.Quantile(1 - tail), beta.Mean));
    }

    private static double LogLikelihoodAt(IReadOnlyList<IReadOnlyList<long>> counts, double[] alpha)
    {
        double sum = alpha.Sum();
        double log = 0;
        foreach (IReadOnlyList<long> row in counts)
        {
            log += GammaFunction.Log(sum) - GammaFunction.Log(sum + row.Sum());
            for (int k = 0; k < alpha.Length; k++)
            {
                log += row[k] == 0 ? 0 : GammaFunction.Log(alpha[k] + row[k]) - GammaFunction.Log(alpha[k]);
            }
        }

        return log;
    }

    private static int[] Reach(IEnumerable<long> counts)
    {
        long[] all = [.. counts];
        int[] reach = new int[all.Max()];
        foreach (long count in all)
        {
            for (int j = 0; j < count; j++)
            {
                reach[j]++;
            }
        }

        return reach;
    }

    // Compiled at full strength at once: a run is over before the run time would have noticed that it is hot.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double Slope(int[] reach, double alpha)
    {
        double sum = 0;
        for (int j = 0; j < reach.Length; j++)
        {
            sum += reach[j] / (alpha + j);
        }

        return sum;
    }
}
