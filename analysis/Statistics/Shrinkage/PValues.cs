namespace PartsSignal.Analysis.Statistics.Shrinkage;

/// <summary>
/// P-values adjusted for how many were looked at, in the order given. All that were looked at must be there, not only
/// those to be shown.
/// </summary>
internal static class PValues
{
    /// <summary>Benjamini and Hochberg (1995): q-values that hold the share of false discoveries.</summary>
    public static IReadOnlyList<double> BenjaminiHochberg(IReadOnlyList<double> p)
    {
        double[] adjusted = new double[p.Count];
        double lowest = 1;
        int[] order = Ascending(p);
        for (int rank = order.Length; rank >= 1; rank--)
        {
            int i = order[rank - 1];
            // The ratio first: at the last rank it is 1, and p times 1 is p to the last digit.
            lowest = Math.Min(lowest, p[i] * ((double)p.Count / rank));
            adjusted[i] = lowest;
        }

        return adjusted;
    }

    private static int[] Ascending(IReadOnlyList<double> p)
    {
        foreach (double value in p)
        {
            if (!(value is >= 0 and <= 1))
            {
                throw new ArgumentOutOfRangeException(nameof(p), value, "A p-value is between 0 and 1.");
            }
        }

        int[] order = [.. Enumerable.Range(0, p.Count)];
        Array.Sort(order, (a, b) => p[a] != p[b] ? p[a].CompareTo(p[b]) : a.CompareTo(b));
        return order;
    }
}

/// <summary>What a finding must be beside unlikely: large enough, and more than a handful.</summary>
/// <param name="Q">Largest q-value; default 0.10.</param>
/// <param name="Ratio">Smallest ratio of observed to expected; default 1.5.</param>
/// <param name="Count">Smallest count; default 3.</param>
public sealed record EffectGate(double Q = 0.10, double Ratio = 1.5, long Count = 3)
{
    /// <summary>The smallest count that is large enough when so many are expected.</summary>
    public long Fewest(double expected) => Math.Max(Count, (long)Math.Ceiling(Ratio * expected));

    /// <summary>True when all three hold.</summary>
    public bool Passes(double? q, double? ratio, long count) => q <= Q && ratio >= Ratio && count >= Count;
}
