using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>The build months in which an alarm's appliances concentrate: a bad batch.</summary>
/// <param name="From">First build month.</param>
/// <param name="To">Last build month.</param>
/// <param name="Cases">Cases built within.</param>
/// <param name="Known">Cases whose build month is known.</param>
/// <param name="Usual">Share of the group's other calls built within.</param>
/// <param name="P">Chance of so many, times the windows tried.</param>
internal sealed record BuildWindow(int From, int To, long Cases, long Known, double Usual, double P)
{
    private static readonly int[] Widths = [1, 3, 6, 12, 24];
    private const double Convincing = 0.01;

    /// <summary>
    /// Finds the window that is hardest to explain by the group's other calls; null when none is convincing. A scan over
    /// windows of 1, 3, 6, 12 and 24 months, Bonferroni over all that were tried.
    /// </summary>
    /// <param name="cases">Build months of the alarm's appliances.</param>
    /// <param name="others">Build months of the group's other calls.</param>
    public static BuildWindow? Find(IReadOnlyList<int> cases, IReadOnlyList<int> others)
    {
        if (cases.Count < 3)
        {
            return null;
        }

        int[] starts = [.. cases.Distinct().Order()];
        BuildWindow? best = null;
        int tried = starts.Length * Widths.Length;
        foreach (int width in Widths)
        {
            foreach (int from in starts)
            {
                long within = cases.Count(m => m >= from && m < from + width);
                double usual = (others.Count(m => m >= from && m < from + width) + 0.5) / (others.Count + 1.0);
                double p = Math.Min(1, tried * new BinomialDistribution(cases.Count, usual).UpperTail(within - 1));
                if (p <= Convincing && 2 * within >= cases.Count && (best is null || p < best.P))
                {
                    best = new BuildWindow(from, cases.Where(m => m >= from && m < from + width).Max(), within, cases.Count, usual, p);
                }
            }
        }

        return best;
    }
}
