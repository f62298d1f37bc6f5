using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Rates;

/// <summary>Turns counts into failure rates.</summary>
public static class FailureRateTable
{
    /// <summary>
    /// All rates over the whole stretch the counts were taken from. By type, brand, family and age a subject that was at
    /// risk and did not happen has its row; in the finer groupings only what happened has one.
    /// </summary>
    public static IReadOnlyList<FailureRate> Create(RateCounts counts, RateOptions options)
    {
        Dictionary<(RateGroup, RateSubject), Estimate> shrunk = RateShrinkage.Of(counts, options);
        return [.. counts.Groups.Where(g => g.Group.Month is null).SelectMany(g => Rows(counts, g, shrunk, options))];
    }

    private static IEnumerable<FailureRate> Rows(
        RateCounts counts, GroupSize size, Dictionary<(RateGroup, RateSubject), Estimate> shrunk, RateOptions options)
    {
        bool fine = size.Group.Grouping is "family_age" or "family_complaint";
        foreach (RateSubject subject in counts.Subjects(size.Group))
        {
            long events = counts.Events(size.Group, subject);
            if (!fine || events > 0)
            {
                yield return Row(size, subject, events, shrunk.GetValueOrDefault((size.Group, subject)), options);
            }
        }
    }

    private static FailureRate Row(GroupSize size, RateSubject subject, long events, Estimate? shrunk, RateOptions options)
    {
        bool share = size.Group.Basis == RateBasis.ShareOfCalls;
        Estimate raw = RawRate.From(size, subject, events, options);
        return new FailureRate
        {
            Basis = size.Group.Basis,
            Grouping = size.Group.Grouping,
            ApplianceType = size.Group.ApplianceType,
            Brand = size.Group.Brand,
            ModelFamily = size.Group.ModelFamily,
            AgeBand = size.Group.AgeBand,
            GivenComplaint = size.Group.GivenComplaint,
            GroupValue = size.Group.GroupValue,
            SubjectKind = subject.Kind,
            Subject = subject.Name,
            Events = events,
            Exposure = RawRate.Exposure(size, subject),
            ExposureUnit = share ? "calls" : "unit-years",
            NotKnown = size.Calls - size.KnownCalls,
            Unit = share ? RawRate.Share : RawRate.PerHundredYears,
            Estimate = raw.Value,
            Lower = raw.Lower,
            Upper = raw.Upper,
            Missing = raw.Missing,
            Shrunk = shrunk?.Value,
            ShrunkLower = shrunk?.Lower,
            ShrunkUpper = shrunk?.Upper,
            ShrunkOver = shrunk?.Value is null ? null : size.Group.ModelFamily is null ? "brands" : "families",
        };
    }
}
