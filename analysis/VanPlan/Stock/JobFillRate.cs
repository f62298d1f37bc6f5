using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Analysis.VanPlan.Stock;

/// <summary>
/// Chance that the k-th job of a tour finds all it needs, when each part is needed independently with one piece at
/// most per job (Bijvank, Koole and Vis 2010). Exact over the states of the stock.
/// </summary>
public static class JobFillRate
{
    /// <summary>Chance per job of the tour, first to last.</summary>
    /// <param name="need">Chance that a job needs each part, 0 to 1.</param>
    /// <param name="stock">Pieces of each part at the start.</param>
    /// <param name="jobs">Jobs in the tour.</param>
    /// <param name="rule">What a job that misses a part takes.</param>
    public static double[] PerJob(IReadOnlyList<double> need, IReadOnlyList<int> stock, int jobs, ConsumeRule rule)
    {
        var states = new Dictionary<string, (int[] Aboard, double Chance)> { [string.Join(',', stock)] = ([.. stock], 1) };
        double[] done = new double[jobs];
        for (int k = 0; k < jobs; k++)
        {
            var next = new Dictionary<string, (int[] Aboard, double Chance)>();
            foreach ((int[] aboard, double chance) in states.Values)
            {
                for (int set = 0; set < 1 << need.Count; set++)
                {
                    double share = chance * Chance(need, set);
                    bool all = Enumerable.Range(0, need.Count).All(p => (set >> p & 1) == 0 || aboard[p] > 0);
                    done[k] += all ? share : 0;
                    int[] after = all || rule == ConsumeRule.TakeWhatIsThere
                        ? [.. aboard.Select((a, p) => Math.Max(0, a - (set >> p & 1)))]
                        : aboard;
                    string key = string.Join(',', after);
                    next[key] = (after, share + (next.TryGetValue(key, out var known) ? known.Chance : 0));
                }
            }

            states = next;
        }

        return done;
    }

    private static double Chance(IReadOnlyList<double> need, int set)
    {
        double product = 1;
        for (int p = 0; p < need.Count; p++)
        {
            product *= (set >> p & 1) == 1 ? need[p] : 1 - need[p];
        }

        return product;
    }
}
