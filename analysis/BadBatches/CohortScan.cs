using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.BadBatches;

/// <summary>The build months of one family and component that are hardest to explain by its other build months.</summary>
/// <param name="Cohorts">The calls compared.</param>
/// <param name="YoungerThan">Age in months that the calls are under, or null for all ages.</param>
/// <param name="Months">The build months.</param>
/// <param name="P">Chance of so many cases or more in any of the spans tried, if all build months are alike.</param>
/// <param name="Tried">Spans tried.</param>
internal sealed record CohortScan(BuildCohorts Cohorts, int? YoungerThan, BuildMonths Months, double P, int Tried)
{
    private const int Quarter = 3;
    private const int LongestSpan = 24;
    private static readonly int[] Spans = [3, 6, 12, 24];

    // Early failures mark a bad batch best; all ages are tried as well.
    private static readonly int?[] Ages = [60, null];

    // A span whose cases lie within two standard deviations of the expected is nowhere near convincing.
    private const double WorthComputing = 2;

    /// <summary>
    /// Tries spans of 3, 6, 12 and 24 build months, a quarter apart, once for calls under five years of age and once for
    /// all. Each is held against the family's other build months at the same ages (<see cref="HypergeometricSum"/>), and
    /// the smallest chance is multiplied by the spans tried (Bonferroni). Spans that could not convince even with every
    /// case in them are not tried (Tarone 1990).
    /// </summary>
    /// <param name="family">Calls of the family, oldest first.</param>
    /// <param name="component">The component.</param>
    /// <param name="fewest">Fewest cases in a span.</param>
    /// <param name="ratio">Smallest ratio of cases to those expected.</param>
    /// <param name="strictest">The smallest chance that could be asked of it.</param>
    /// <returns>The scan, or null if no span could convince.</returns>
    public static CohortScan? Run(IReadOnlyList<BatchCall> family, string component, long fewest, double ratio, double strictest)
    {
        int tried = 0;
        (BuildCohorts Cohorts, int? Age, BuildMonths Months, double P)? best = null;
        foreach (int? age in Ages)
        {
            if (BuildCohorts.From(family, component, age) is not { } cohorts || cohorts.Cases < fewest)
            {
                continue;
            }

            foreach (BuildMonths months in Quarters(cohorts))
            {
                FixedTotals[] totals = cohorts.Against(months);
                if (totals.Sum(t => t.Most) < fewest || HypergeometricSum.Smallest(totals) > strictest)
                {
                    continue;
                }

                tried++;
                int cases = cohorts.CasesIn(months);
                double expected = totals.Sum(t => t.Mean);
                if (cases < fewest || cases < ratio * expected || cases - expected < WorthComputing * Math.Sqrt(totals.Sum(t => t.Variance)))
                {
                    continue;
                }

                double p = HypergeometricSum.AtLeast(totals, cases);
                if (best is null || p < best.Value.P)
                {
                    best = (cohorts, age, months, p);
                }
            }
        }

        return best is var (found, under, span, chance)
            ? new CohortScan(found, under, Sharpen(found, span, fewest), Math.Min(1, tried * chance), tried)
            : tried == 0 ? null : new CohortScan(BuildCohorts.From(family, component, null)!, null, new BuildMonths(0, -1), 1, tried);
    }

    private static IEnumerable<BuildMonths> Quarters(BuildCohorts cohorts)
    {
        int first = cohorts.First - cohorts.First % Quarter;
        return
            from span in Spans
            from start in Enumerable.Range(0, (cohorts.Last - first) / Quarter + 1)
            let months = new BuildMonths(first + start * Quarter, first + start * Quarter + span - 1)
            select months;
    }

    // The months themselves: of all spans of up to two years that touch the quarters found, the one with the largest
    // likelihood ratio (Kulldorff 1997). The chance is that of the quarters.
    private static BuildMonths Sharpen(BuildCohorts cohorts, BuildMonths found, long fewest)
    {
        BuildMonths best = found;
        double highest = double.NegativeInfinity;
        int[] built = [.. cohorts.Calls.Where(cohorts.IsCase).Select(c => c.MadeMonth).Distinct().Order()];
        foreach (int from in built.Where(m => m > found.From - LongestSpan && m <= found.To))
        {
            foreach (int to in built.Where(m => m >= from && m >= found.From && m < from + LongestSpan))
            {
                var months = new BuildMonths(from, to);
                double expected = cohorts.Against(months).Sum(t => t.Mean);
                double gain = Gain(cohorts.CasesIn(months), cohorts.Cases, expected);
                if (gain > highest && cohorts.CasesIn(months) >= fewest)
                {
                    (highest, best) = (gain, months);
                }
            }
        }

        return best;
    }

    private static double Gain(int within, int all, double expected) => within <= expected
        ? 0
        : within * Math.Log(within / expected) + (within == all ? 0 : (all - within) * Math.Log((all - within) / (all - expected)));
}
