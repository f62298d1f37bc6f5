using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Prediction;

/// <summary>Counts the chain and finds how strongly each level leans on the one above.</summary>
internal static class BackOffTrainer
{
    private const double MinAlpha = 0.05;
    private const double MaxAlpha = 5_000;
    private const int AlphaSteps = 16;

    /// <summary>
    /// Trains the chain, widest level first. Each alpha minimises the leave-one-out log loss of the jobs: every job is
    /// judged by the counts of all others, at its own level and at every level above.
    /// </summary>
    /// <param name="calls">Closed jobs; none gives a model without needs.</param>
    /// <param name="chain">The levels, or null for the full chain.</param>
    public static BackOffModel Train(IReadOnlyList<ClosedCall> calls, IReadOnlyList<BackOffLevel>? chain = null)
    {
        string[] needs = NeedList.From(calls);
        int[] need = NeedList.Index(needs, calls);
        double[] parent = Smoothing.Uniform(calls.Count);
        Array.Fill(parent, 1.0 / Math.Max(needs.Length, 1));
        var levels = new List<BackOffCounts>();
        foreach (BackOffLevel level in chain ?? BackOffLevel.Chain)
        {
            (Dictionary<string, int[]> groups, int[]?[] ofCall) = BackOffCounts.Count(level, calls, need, needs.Length);
            (int[] own, int[] total) = WithoutSelf(groups, ofCall, need);
            double alpha = Math.Exp(GoldenSection.Minimize(x => LogLoss(own, total, parent, Math.Exp(x)), Math.Log(MinAlpha), Math.Log(MaxAlpha), AlphaSteps));
            for (int i = 0; i < parent.Length; i++)
            {
                parent[i] = total[i] < 0 ? parent[i] : (own[i] + alpha * parent[i]) / (total[i] + alpha);
            }

            levels.Add(new BackOffCounts(level, alpha, groups));
        }

        return new BackOffModel(needs, levels);
    }

    private static (int[] Own, int[] Total) WithoutSelf(Dictionary<string, int[]> groups, int[]?[] ofCall, int[] need)
    {
        Dictionary<int[], int> sums = groups.Values.ToDictionary(g => g, g => g.Sum());
        var own = new int[need.Length];
        var total = new int[need.Length];
        for (int i = 0; i < own.Length; i++)
        {
            (own[i], total[i]) = ofCall[i] is { } counts ? (counts[need[i]] - 1, sums[counts] - 1) : (0, -1);
        }

        return (own, total);
    }

    private static double LogLoss(int[] own, int[] total, double[] parent, double alpha)
    {
        double sum = 0;
        for (int i = 0; i < own.Length; i++)
        {
            if (total[i] > 0)
            {
                sum -= Math.Log((own[i] + alpha * parent[i]) / (total[i] + alpha));
            }
        }

        return sum;
    }
}
