namespace PartsSignal.Analysis.Trends;

/// <summary>
/// Cumulative sum for slow drifts of counts: C = max(0, C + y - k), alarm at C >= h, with
/// k = (m1 - m0)/ln(m1/m0) (Lucas 1985). Where exposure moves, k moves in proportion.
/// </summary>
internal static class PoissonCusum
{
    /// <summary>The reference value between the usual mean and the one to be found.</summary>
    public static double Reference(double usual, double raised) => (raised - usual) / Math.Log(raised / usual);

    /// <summary>The sums after each count, going on beyond an alarm.</summary>
    /// <param name="counts">Counts in order.</param>
    /// <param name="references">k of each count.</param>
    public static IReadOnlyList<double> Path(IReadOnlyList<double> counts, IReadOnlyList<double> references)
    {
        double[] sums = new double[counts.Count];
        double sum = 0;
        for (int i = 0; i < sums.Length; i++)
        {
            sum = Math.Max(0, sum + counts[i] - references[i]);
            sums[i] = sum;
        }

        return sums;
    }

    /// <summary>Since when the sum has been above nought: where the drift behind a sum began. From 0.</summary>
    public static int StartOfRise(IReadOnlyList<double> sums, int at)
    {
        int start = at;
        while (start > 0 && sums[start - 1] > 0)
        {
            start--;
        }

        return start;
    }
}
