using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Whether families fail at the same ages.</summary>
/// <param name="Observed">Failures of each group.</param>
/// <param name="Expected">Failures of each group if all failed alike.</param>
/// <param name="ChiSquare">Test statistic; null when it cannot be had.</param>
/// <param name="P">Chance of so large a statistic if all failed alike; null when it cannot be had.</param>
/// <param name="Missing">Why there is no test; null when there is one.</param>
internal sealed record LogRankTest(IReadOnlyList<long> Observed, IReadOnlyList<double> Expected, double? ChiSquare, double? P, string? Missing);

/// <summary>
/// The log-rank test (Mantel 1966; Peto and Peto 1972) for two or more groups, with ties and late entry: at every
/// failure age the group's failures against d n_g/n, with the hypergeometric covariance.
/// </summary>
internal static class LogRank
{
    /// <summary>Compares groups.</summary>
    /// <param name="groups">Spans of each group; at least two groups.</param>
    public static LogRankTest Compare(IReadOnlyList<IReadOnlyList<AgeSpan>> groups)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups.Count, 2);
        TiedAges ties = TiedAges.Among(groups.SelectMany(g => g).SelectMany(s => new[] { s.Entry, s.Exit }));
        return Compare([.. groups.Select(g => AgeLedger.From([.. g.Select(s => s with { Entry = ties.Snap(s.Entry), Exit = ties.Snap(s.Exit) })]))]);
    }

    /// <summary>Compares groups whose ages are counted already; ties must be exact.</summary>
    public static LogRankTest Compare(IReadOnlyList<AgeLedger> ledgers)
    {
        int k = ledgers.Count;
        ArgumentOutOfRangeException.ThrowIfLessThan(k, 2);
        double[] expected = new double[k];
        double[,] covariance = new double[k, k];
        double[] ages = [.. ledgers.SelectMany(l => l.RiskSets()).Select(s => s.Age).Distinct().Order()];
        RiskSet[][] sets = [.. ledgers.Select(l => AtAges(l, ages))];
        for (int a = 0; a < ages.Length; a++)
        {
            double n = sets.Sum(s => s[a].AtRisk);
            double d = sets.Sum(s => s[a].Failures);
            for (int g = 0; g < k; g++)
            {
                double share = sets[g][a].AtRisk / n;
                expected[g] += d * share;
                for (int h = 0; n > 1 && h < k; h++)
                {
                    covariance[g, h] += d * (n - d) / (n - 1) * share * ((g == h ? 1 : 0) - sets[h][a].AtRisk / n);
                }
            }
        }

        long[] observed = [.. ledgers.Select(l => l.Failures)];
        int[] informative = [.. Enumerable.Range(0, k).Where(g => covariance[g, g] > 0)];
        if (informative.Length < 2)
        {
            return new LogRankTest(observed, expected, null, null, "the groups were never at risk at the same failure age");
        }

        int[] free = informative[..^1];
        double[] difference = [.. free.Select(g => observed[g] - expected[g])];
        double[,] reduced = new double[free.Length, free.Length];
        for (int i = 0; i < free.Length; i++)
        {
            for (int j = 0; j < free.Length; j++)
            {
                reduced[i, j] = covariance[free[i], free[j]];
            }
        }

        double chi = InverseForm(reduced, difference);
        return double.IsFinite(chi)
            ? new LogRankTest(observed, expected, chi, new ChiSquareDistribution(free.Length).UpperTail(chi), null)
            : new LogRankTest(observed, expected, null, null, "the groups cannot be told apart by their risk sets");
    }

    // v' M^-1 v by elimination; not finite where M is singular. For two groups it is v (v / M) to the last digit.
    private static double InverseForm(double[,] m, double[] v)
    {
        double form = 0;
        for (int i = 0; i < v.Length; i++)
        {
            form += v[i] * (v[i] / m[i, i]);
            for (int j = i + 1; j < v.Length; j++)
            {
                double factor = m[j, i] / m[i, i];
                v[j] -= factor * v[i];
                for (int k = i + 1; k < v.Length; k++)
                {
                    m[j, k] -= factor * m[i, k];
                }
            }
        }

        return form;
    }

    private static RiskSet[] AtAges(AgeLedger ledger, double[] ages)
    {
        var sets = new RiskSet[ages.Length];
        long present = 0;
        int row = 0;
        for (int a = 0; a < ages.Length; a++)
        {
            for (; row < ledger.Rows.Count && ledger.Rows[row].Age < ages[a]; row++)
            {
                present += ledger.Rows[row].Entries - ledger.Rows[row].Exits;
            }

            bool here = row < ledger.Rows.Count && ledger.Rows[row].Age == ages[a];
            sets[a] = new RiskSet(ages[a], present, here ? ledger.Rows[row].Failures : 0);
        }

        return sets;
    }
}
