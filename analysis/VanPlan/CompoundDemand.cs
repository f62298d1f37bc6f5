namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Pieces of a part asked for within a window: jobs come by a negative binomial (the gamma predictive of an uncertain
/// rate), each asks for its own number of pieces. Probabilities by the recursion of Panjer (1981).
/// </summary>
internal static class CompoundDemand
{
    /// <summary>P(0), P(1), ..., P(most).</summary>
    /// <param name="jobs">Mean number of jobs that ask for the part, 0 or more.</param>
    /// <param name="size">Size of the negative binomial, above 0; the larger, the nearer to Poisson.</param>
    /// <param name="pieces">Share of those jobs that ask for 1, 2, ... pieces; sums to 1.</param>
    /// <param name="most">Last count wanted.</param>
    public static double[] Pmf(double jobs, double size, ReadOnlySpan<double> pieces, int most)
    {
        double[] pmf = new double[most + 1];
        double odds = jobs / size;
        double a = odds / (1 + odds);
        pmf[0] = Math.Pow(1 + odds, -size);
        for (int n = 1; n <= most; n++)
        {
            double sum = 0;
            for (int j = 1; j <= Math.Min(n, pieces.Length); j++)
            {
                sum += a * (1 + ((size - 1) * j / n)) * pieces[j - 1] * pmf[n - j];
            }

            pmf[n] = sum;
        }

        return pmf;
    }
}

/// <summary>How many of each there are; indexes run below these.</summary>
public sealed record DemandSizes(int Vans, int Types, int Families, int Parts);
