namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// Weights of a stack (Wolpert 1992): the lowest mean log loss on answers to calls that no member learned from, each
/// weight 0 or more. One member alone gets the inverse of its temperature.
/// </summary>
internal static class StackWeights
{
    /// <summary>Members with less weight than this are left out.</summary>
    public const double Least = 0.03;

    private const int Rounds = 25;

    // As much as so many calls: keeps twins from being played off against each other.
    private const double Ridge = 3;

    /// <summary>Finds the weights by Newton steps along one weight at a time; the function has one valley.</summary>
    /// <param name="members">Per member the answers to the same calls in the same order, over the same needs.</param>
    public static double[] Fit(IReadOnlyList<IReadOnlyList<Forecast>> members)
    {
        double start = 1.0 / members.Count;
        double[] weights = [.. members.Select(_ => start)];
        int[] known = [.. Enumerable.Range(0, members[0].Count).Where(i => members[0][i].Truth >= 0)];
        double[][][] logs = [.. known.Select(i => members.Select(m => Logs(m[i].Odds)).ToArray())];
        for (int round = 0; round < Rounds && known.Length > 0; round++)
        {
            for (int m = 0; m < weights.Length; m++)
            {
                double slope = Ridge * (weights[m] - start), bend = Ridge;
                for (int i = 0; i < known.Length; i++)
                {
                    (double mean, double variance) = Moments(logs[i], weights, m);
                    slope += mean - logs[i][m][members[0][known[i]].Truth];
                    bend += variance;
                }

                weights[m] = Math.Max(0, weights[m] - slope / bend);
            }
        }

        return [.. weights.Select(w => w < Least ? 0 : w)];
    }

    /// <summary>Logs of odds, none below that of the smallest probability a loss is taken of.</summary>
    internal static double[] Logs(double[] odds) => [.. odds.Select(p => Math.Log(Math.Max(p, Forecast.Floor)))];

    /// <summary>The pooled odds.</summary>
    internal static double[] Pool(double[][] logs, double[] weights)
    {
        var odds = new double[logs[0].Length];
        for (int m = 0; m < logs.Length; m++)
        {
            for (int k = 0; k < odds.Length; k++)
            {
                odds[k] += weights[m] * logs[m][k];
            }
        }

        double top = odds.Length == 0 ? 0 : odds.Max(), sum = 0;
        for (int k = 0; k < odds.Length; k++)
        {
            odds[k] = Math.Exp(odds[k] - top);
            sum += odds[k];
        }

        for (int k = 0; k < odds.Length; k++)
        {
            odds[k] /= sum;
        }

        return odds;
    }

    private static (double Mean, double Variance) Moments(double[][] logs, double[] weights, int member)
    {
        double[] odds = Pool(logs, weights);
        double mean = 0, square = 0;
        for (int k = 0; k < odds.Length; k++)
        {
            mean += odds[k] * logs[member][k];
            square += odds[k] * logs[member][k] * logs[member][k];
        }

        return (mean, square - mean * mean);
    }
}
