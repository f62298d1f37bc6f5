using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Intervals;

/// <summary>First rate over second.</summary>
/// <param name="Ratio">The ratio with its interval; missing where neither side has an event or a side has no exposure; its value is missing too where only the second has none.</param>
/// <param name="P">Two-sided p of equal rates; null where the ratio is missing.</param>
internal sealed record RateRatio(Estimate Ratio, double? P)
{
    /// <summary>
    /// Exact, given the sum of both counts (Przyborowski &amp; Wilenski 1940): the first count is binomial with chance
    /// E1 r / (E1 r + E2). The interval turns Clopper and Pearson's into one of the ratio; p adds up the chances of all
    /// counts no likelier than the observed, so at the edge the two may disagree.
    /// </summary>
    public static RateRatio Exact(long events1, double exposure1, long events2, double exposure2, double confidence = 0.95)
    {
        if (!(exposure1 > 0 && exposure2 > 0))
        {
            return new RateRatio(Estimate.None("no exposure on one side"), null);
        }

        long all = events1 + events2;
        if (all == 0)
        {
            return new RateRatio(Estimate.None("no events on either side"), null);
        }

        double p = new BinomialDistribution(all, exposure1 / (exposure1 + exposure2)).TwoSidedP(events1);
        Estimate share = Proportion.ClopperPearson(events1, all, confidence);
        if (events2 == 0)
        {
            return new RateRatio(Estimate.None("no events to compare with"), p);
        }

        double odds = exposure2 / exposure1;
        double? upper = share.Upper == 1 ? null : Odds(share.Upper!.Value) * odds;
        return new RateRatio(Estimate.From(events1 / exposure1 / (events2 / exposure2), Odds(share.Lower!.Value) * odds, upper), p);
    }

    private static double Odds(double share) => share / (1 - share);
}
