using PartsSignal.Analysis.Sql;
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
                yield return Row(counts, size, subject, events, shrunk.GetValueOrDefault((size.Group, subject)), options);
            }
        }
    }

    private static FailureRate Row(RateCounts counts, GroupSize size, RateSubject subject, long events, Estimate? shrunk, RateOptions options)
    {
        bool share = size.Group.Basis == RateBasis.ShareOfCalls;
        UntoldEvents untold = counts.Untold(size.Group, subject);
        Estimate raw = RawRate.From(size, subject, events, untold, options);
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
            Untold = share ? null : untold.MayBe,
            UntoldExpected = share ? null : untold.Expected,
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

/// <summary>When a figure is given, and how sure its interval is.</summary>
public sealed record RateOptions
{
    /// <summary>Confidence of every interval, above 0 and below 1. Default 0.95.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Fewest calls behind a share. Default 10.</summary>
    public int FewestCalls { get; init; } = 10;

    /// <summary>Fewest unit-years behind a rate. Default 10.</summary>
    public double FewestUnitYears { get; init; } = 10;
}

/// <summary>Everything the failure rates are computed from, as SQL counted it.</summary>
/// <param name="Groups">Sizes of all groups.</param>
/// <param name="Counts">Subjects with at least one event, by group.</param>
/// <param name="UntoldCounts">Cases that may belong to the register's groups although their jobs do not tell the machine.</param>
/// <param name="SeenUntold">Cases that may be on units that no register lists although their jobs do not tell the unit.</param>
public sealed record RateCounts(IReadOnlyList<GroupSize> Groups, IReadOnlyList<SubjectCount> Counts, IReadOnlyList<UntoldCount> UntoldCounts, IReadOnlyList<SeenUntold> SeenUntold)
{
    private readonly UntoldSpread _untold = new(UntoldCounts, SeenUntold);

    private readonly Dictionary<(RateGroup, RateSubject), long> _events = Counts.ToDictionary(c => (c.Group, c.Subject), c => c.Events);

    private readonly ILookup<(string Basis, string Type), RateSubject> _subjects = Counts
        .Where(c => c.Group.Grouping == "type")
        .ToLookup(c => (c.Group.Basis, c.Group.ApplianceType), c => c.Subject);

    /// <summary>Reads the counts of a session in which the rate tables were built.</summary>
    public static RateCounts Read(Database database) => new(
        database.ReadTable<GroupSize>("rate_groups"), database.ReadTable<SubjectCount>("rate_counts"), database.ReadTable<UntoldCount>("rate_untold"),
        database.ReadTable<SeenUntold>("seen_untold"));

    /// <summary>Events of a subject in a group; 0 where none was seen.</summary>
    public long Events(RateGroup group, RateSubject subject) => _events.GetValueOrDefault((group, subject));

    /// <summary>What jobs that do not tell their machine may add to a group; nothing for shares of calls.</summary>
    internal UntoldEvents Untold(RateGroup group, RateSubject subject) => _untold.Of(group, subject, wider => Events(wider, subject));

    /// <summary>Subjects that this basis has seen on any appliance of the type: where one of them is not counted, it was at risk and did not happen.</summary>
    public IEnumerable<RateSubject> Subjects(RateGroup group) => _subjects[(group.Basis, group.ApplianceType)]
        .Where(s => group.GivenComplaint is null || s.Kind == RateSubject.Component);
}
