using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Trend;

/// <summary>
/// Monotone trend without a model (Mann 1945; Kendall 1975), variance corrected for ties. Not valid where neighbours
/// depend on each other or seasons are left in.
/// </summary>
/// <param name="S">Rising pairs minus falling pairs.</param>
/// <param name="Variance">Of S without trend.</param>
/// <param name="Z">Normal score with continuity correction; 0 where S is 0.</param>
/// <param name="P">Two-sided.</param>
/// <param name="TauB">Kendall's tau-b; null where all values are alike.</param>
/// <param name="Slope">Theil (1950) and Sen (1968): median of all pairwise slopes, per step.</param>
public sealed record MannKendall(long S, double Variance, double Z, double P, double? TauB, double Slope)
{
    /// <summary>Tests a series at equal steps; null with fewer than three values.</summary>
    public static MannKendall? Of(IReadOnlyList<double> series)
    {
        int n = series.Count;
        if (n < 3)
        {
            return null;
        }

        long s = 0;
        var slopes = new List<double>(n * (n - 1) / 2);
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++)
            {
                s += Math.Sign(series[j] - series[i]);
                slopes.Add((series[j] - series[i]) / (j - i));
            }
        }

        double variance = n * (n - 1.0) * ((2 * n) + 5);
        double tied = 0;
        foreach (double t in series.GroupBy(v => v).Select(g => (double)g.Count()))
        {
            variance -= t * (t - 1) * ((2 * t) + 5);
            tied += t * (t - 1) / 2;
        }

        variance /= 18;
        double z = s == 0 || variance <= 0 ? 0 : (s - Math.Sign(s)) / Math.Sqrt(variance);
        double pairs = n * (n - 1) / 2.0;
        double? tau = tied < pairs ? s / Math.Sqrt((pairs - tied) * pairs) : null;
        return new MannKendall(s, variance, z, NormalDistribution.TwoSidedP(z), tau, Median(slopes));
    }

    private static double Median(List<double> values)
    {
        values.Sort();
        int middle = values.Count / 2;
        return values.Count % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
