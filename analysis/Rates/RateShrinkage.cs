using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Rates;

/// <summary>
/// Shrinks the figures of sibling groups (families of one type, say) towards each other, one subject at a time: shares by a
/// beta prior (<see cref="BetaBinomialShrinkage"/>), rates by a gamma prior (<see cref="GammaPoissonShrinkage"/>). The
/// intervals carry that the prior is an estimate.
/// </summary>
internal static class RateShrinkage
{
    /// <summary>Shrunk figures by group and subject, for groups that have siblings.</summary>
    public static Dictionary<(RateGroup, RateSubject), Estimate> Of(RateCounts counts, RateOptions options)
    {
        var shrunk = new Dictionary<(RateGroup, RateSubject), Estimate>();
        IEnumerable<IGrouping<RateGroup, GroupSize>> families = counts.Groups
            .Where(g => g.Group.Month is null && g.Group.HasSiblings)
            .GroupBy(g => g.Group.Siblings);
        foreach (IGrouping<RateGroup, GroupSize> siblings in families)
        {
            Shrink(counts, [.. siblings], [.. counts.Subjects(siblings.Key)], options, shrunk);
        }

        return shrunk;
    }

    private static void Shrink(
        RateCounts counts, GroupSize[] siblings, RateSubject[] subjects, RateOptions options, Dictionary<(RateGroup, RateSubject), Estimate> shrunk)
    {
        foreach (RateSubject subject in subjects)
        {
            IReadOnlyList<Estimate> estimates = siblings[0].Group.Basis == RateBasis.ShareOfCalls
                ? BetaBinomialShrinkage.Shrink(
                    [.. siblings.Select(g => new ShareGroup(counts.Events(g.Group, subject), (long)RawRate.Exposure(g, subject)))], options.Confidence)
                : GammaPoissonShrinkage.Shrink(
                    [.. siblings.Select(g => new CountGroup(counts.Events(g.Group, subject), RawRate.Exposure(g, subject) / 100))], options.Confidence);
            for (int i = 0; i < siblings.Length; i++)
            {
                shrunk[(siblings[i].Group, subject)] = estimates[i];
            }
        }
    }
}
