using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>One stratum of a comparison of two groups with all totals held fixed.</summary>
/// <param name="Total">Calls of both groups, 0 or more.</param>
/// <param name="Cases">Cases among them.</param>
/// <param name="Group">Calls of the group looked at.</param>
internal readonly record struct FixedTotals(int Total, int Cases, int Group)
{
    /// <summary>Most cases the group can hold.</summary>
    public int Most => Math.Min(Group, Cases);

    /// <summary>Fewest cases the group can hold.</summary>
    public int Fewest => Math.Max(0, Group + Cases - Total);

    /// <summary>Cases expected in the group if it is like the rest.</summary>
    public double Mean => Total == 0 ? 0 : (double)Group * Cases / Total;

    /// <summary>Variance of the group's cases if it is like the rest.</summary>
    public double Variance => Total < 2 ? 0 : Mean * (Total - Cases) / Total * (Total - Group) / (Total - 1);
}

/// <summary>
/// Number of cases in a group, added up over strata, when every stratum's totals are fixed and the group is like the rest:
/// a sum of hypergeometric counts (Fisher 1935; over strata Gart 1970, Mehta, Patel and Gray 1985). As the totals are
/// fixed, nothing is assumed about the usual share of cases: its uncertainty is part of the answer.
/// </summary>
internal static class HypergeometricSum
{
    /// <summary>P(X &gt;= observed). 1 at or under the fewest possible, 0 above the most.</summary>
    public static double AtLeast(IReadOnlyList<FixedTotals> strata, int observed)
    {
        int fewest = strata.Sum(s => s.Fewest);
        double[] chances = [1];
        foreach (FixedTotals stratum in strata.Where(s => s.Most > s.Fewest))
        {
            double[] own = Chances(stratum);
            double[] sum = new double[chances.Length + own.Length - 1];
            for (int i = 0; i < chances.Length; i++)
            {
                for (int j = 0; j < own.Length; j++)
                {
                    sum[i + j] += chances[i] * own[j];
                }
            }

            chances = sum;
        }

        double tail = 0;
        for (int i = chances.Length - 1; i >= Math.Max(0, observed - fewest); i--)
        {
            tail += chances[i];
        }

        return Math.Min(1, tail);
    }

    /// <summary>The smallest chance that any count can have: that of the most cases the group could hold.</summary>
    public static double Smallest(IReadOnlyList<FixedTotals> strata) => Math.Exp(strata.Sum(s => LogChance(s, s.Most)));

    private static double[] Chances(FixedTotals stratum) =>
        [.. Enumerable.Range(stratum.Fewest, stratum.Most - stratum.Fewest + 1).Select(k => Math.Exp(LogChance(stratum, k)))];

    private static double LogChance(FixedTotals s, int cases) =>
        LogChoose(s.Cases, cases) + LogChoose(s.Total - s.Cases, s.Group - cases) - LogChoose(s.Total, s.Group);

    private static double LogChoose(int n, int k) => GammaFunction.Log(n + 1) - GammaFunction.Log(k + 1) - GammaFunction.Log(n - k + 1);
}
