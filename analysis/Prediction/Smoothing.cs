namespace PartsSignal.Analysis.Prediction;

/// <summary>Shares of a small group, pulled towards the shares of the larger group around it.</summary>
internal static class Smoothing
{
    /// <summary>
    /// p_k = (n_k + alpha parent_k) / (n + alpha): the posterior mean under a Dirichlet prior centred on the parent
    /// (MacKay and Peto 1995).
    /// </summary>
    /// <param name="counts">Counts per need, 0 or more.</param>
    /// <param name="alpha">Strength of the parent in jobs, above 0.</param>
    /// <param name="parent">Shares of the parent, summing to 1.</param>
    public static double[] Towards(ReadOnlySpan<int> counts, double alpha, ReadOnlySpan<double> parent)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(alpha);
        ArgumentOutOfRangeException.ThrowIfNotEqual(parent.Length, counts.Length);
        double total = alpha;
        foreach (int count in counts)
        {
            total += count;
        }

        var shares = new double[counts.Length];
        for (int k = 0; k < shares.Length; k++)
        {
            shares[k] = (counts[k] + alpha * parent[k]) / total;
        }

        return shares;
    }

    /// <summary>The same share everywhere; the parent of the topmost level.</summary>
    public static double[] Uniform(int needs)
    {
        var shares = new double[needs];
        Array.Fill(shares, 1.0 / Math.Max(needs, 1));
        return shares;
    }
}
