using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Rates;

/// <summary>
/// Shrinks the figures of sibling groups (families of one type, say) towards each other: shares of components as a whole
/// by a Dirichlet prior, rates one subject at a time by a gamma prior.
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
            foreach (IGrouping<string, RateSubject> subjects in counts.Subjects(siblings.Key).GroupBy(s => s.Kind))
            {
                if (siblings.Key.Basis == RateBasis.ShareOfCalls)
                {
                    Shares(counts, [.. siblings], [.. subjects], options, shrunk);
                }
                else
                {
                    Rates(counts, [.. siblings], [.. subjects], options, shrunk);
                }
            }
        }

        return shrunk;
    }

    private static void Shares(
        RateCounts counts, GroupSize[] siblings, RateSubject[] subjects, RateOptions options, Dictionary<(RateGroup, RateSubject), Estimate> shrunk)
    {
        long[][] table = [.. siblings.Select(g => subjects.Select(s => counts.Events(g.Group, s)).ToArray())];
        if (DirichletMultinomial.Fit(table) is not { } fit)
        {
            return;
        }

        for (int i = 0; i < siblings.Length; i++)
        {
            long calls = table[i].Sum();
            for (int k = 0; k < subjects.Length; k++)
            {
                shrunk[(siblings[i].Group, subjects[k])] = fit.Share(k, table[i][k], calls, options.Confidence);
            }
        }
    }

    private static void Rates(
        RateCounts counts, GroupSize[] siblings, RateSubject[] subjects, RateOptions options, Dictionary<(RateGroup, RateSubject), Estimate> shrunk)
    {
        foreach (RateSubject subject in subjects)
        {
            CountGroup[] groups = [.. siblings.Select(g => new CountGroup(
                counts.Events(g.Group, subject), RawRate.Exposure(g, subject) / 100))];
            IReadOnlyList<Estimate> estimates = GammaPoissonShrinkage.Shrink(groups, options.Confidence);
            for (int i = 0; i < siblings.Length; i++)
            {
                shrunk[(siblings[i].Group, subject)] = estimates[i];
            }
        }
    }
}
