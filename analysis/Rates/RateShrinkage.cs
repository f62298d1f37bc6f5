using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Rates;

/// <summary>
/// Shrinks the figures of sibling groups (families of one type, say) towards each other, one subject at a time: shares by a
/// beta prior (<see cref="BetaBinomialShrinkage"/>), rates by a gamma prior (<see cref="GammaPoissonShrinkage"/>). The
/// intervals carry that the prior is an estimate. Rates on the register are shrunk with no untold case for the lower limit,
/// with all of them for the upper one (<see cref="UntoldSpread"/>).
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
                : Rates(counts, siblings, subject, options);
            for (int i = 0; i < siblings.Length; i++)
            {
                shrunk[(siblings[i].Group, subject)] = estimates[i];
            }
        }
    }

    private static IReadOnlyList<Estimate> Rates(RateCounts counts, GroupSize[] siblings, RateSubject subject, RateOptions options)
    {
        UntoldEvents[] untold = [.. siblings.Select(g => counts.Untold(g.Group, subject))];
        IReadOnlyList<Estimate> With(Func<UntoldEvents, double> added) => GammaPoissonShrinkage.Shrink(
            [.. siblings.Select((g, i) => new CountGroup(counts.Events(g.Group, subject) + added(untold[i]), RawRate.Exposure(g, subject) / 100))], options.Confidence);
        IReadOnlyList<Estimate> none = With(_ => 0);
        if (untold.All(u => u.Here == 0))
        {
            // All of them fall on the groups as the told ones do: a watched year tells one failure in so many.
            double told = siblings.Sum(g => (double)counts.Events(g.Group, subject));
            double more = told > 0 ? 1 + (untold.Sum(u => u.Expected) / told) : 1;
            return [.. none.Select((e, i) => e.Value is { } value && untold[i].MayBe > 0 ? Estimate.From(more * value, e.Lower, untold[i].Wider * e.Upper!.Value) : e)];
        }

        IReadOnlyList<Estimate> expected = With(u => u.Expected), all = With(u => u.Here);
        return [.. expected.Select((e, i) => e.Value is not { } value ? e : Estimate.From(
            value, Math.Min(value, none[i].Lower!.Value), Math.Max(value, untold[i].Wider * all[i].Upper!.Value)))];
    }
}
