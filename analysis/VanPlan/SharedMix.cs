namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// How much more often a group of jobs comes to one van than its share of the shop's jobs says, shrunk to 1:
/// counts y of expectation e theta, theta gamma with mean 1 and shape a; posterior mean (a + y) / (a + e)
/// (Robbins 1956; Clayton and Kaldor 1987), a by moments over all cells. Aged counts scatter less than whole ones;
/// their variance is e times the mean weight.
/// </summary>
internal static class SharedMix
{
    private const double LeastShape = 0.3;

    /// <summary>Shape of the gamma; infinite where the cells scatter no more than chance.</summary>
    public static double Shape(ReadOnlySpan<double> counts, ReadOnlySpan<double> expected, double meanWeight)
    {
        double excess = 0;
        double square = 0;
        for (int i = 0; i < counts.Length; i++)
        {
            double off = counts[i] - expected[i];
            excess += (off * off) - (expected[i] * meanWeight);
            square += expected[i] * expected[i];
        }

        return excess > 0 ? Math.Max(square / excess, LeastShape) : double.PositiveInfinity;
    }

    /// <summary>Posterior mean of theta; 1 where the shape is infinite.</summary>
    public static double Factor(double count, double expected, double shape) =>
        double.IsInfinity(shape) ? 1 : (shape + count) / (shape + expected);

    /// <summary>Factors of a table of groups by vans (group times vans + van).</summary>
    public static double[] Factors(double[] counts, double[] expected, double meanWeight)
    {
        double shape = Shape(counts, expected, meanWeight);
        double[] factors = new double[counts.Length];
        for (int i = 0; i < counts.Length; i++)
        {
            factors[i] = Factor(counts[i], expected[i], shape);
        }

        return factors;
    }
}
