using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Rates;

/// <summary>
/// Cases that may be on the register although their jobs do not tell the machine, spread over the register's groups. A case
/// that tells the group (family, brand, age band) counts for it; the others are assumed to spread over the groups in proportion
/// to the cases that tell theirs: within a type and subject, what is not told is missing at random (Rubin 1976).
/// </summary>
/// <remarks>
/// Whether such a case is on the register at all is not known either, so that the limits are bounds of that (Horowitz and
/// Manski 2000): with x told cases, u untold that tell the group, and w the factor by which those that tell no group add to
/// it, the lower limit is Garwood's of x and the upper one w times Garwood's of x + u. The figure itself counts each untold
/// case with its chance (untold_failures). The limits hold the calls that reach the shop however many of the untold are on
/// the register, so they hold more often than their 95 %. For units that no register lists, the cases that tell no unit are
/// assumed to be returns of units seen before in the same share as those that tell theirs, by type and subject.
/// </remarks>
internal sealed class UntoldSpread(IReadOnlyList<UntoldCount> counts, IReadOnlyList<SeenUntold> seen)
{
    private readonly Dictionary<(string, RateSubject), SeenUntold> _seen = seen.ToDictionary(s => (s.ApplianceType, s.Subject));
    private readonly Dictionary<(RateGroup, RateSubject), UntoldCount> _cells = counts.ToDictionary(c => (c.Group, c.Subject));

    private readonly Dictionary<(RateGroup, string, RateSubject), (long Possible, double Expected)> _tellAll = counts
        .Where(c => Tells(c.Group))
        .GroupBy(c => (Wider(c.Group), c.Group.Grouping, c.Subject))
        .ToDictionary(g => g.Key, g => (g.Sum(c => c.Possible), g.Sum(c => c.Expected)));

    /// <summary>What may be added to a group.</summary>
    /// <param name="group">The group.</param>
    /// <param name="subject">What is counted.</param>
    /// <param name="told">Told events of a group.</param>
    public UntoldEvents Of(RateGroup group, RateSubject subject, Func<RateGroup, long> told)
    {
        if (group.Basis == RateBasis.SeenUnitYears)
        {
            return _seen.GetValueOrDefault((group.ApplianceType, subject)) is { Told: > 0, Untold: > 0 } s
                ? new UntoldEvents(s.Untold, 0, s.Expected * told(group) / s.Told, 1 + (s.Untold / (double)s.Told))
                : UntoldEvents.None;
        }

        RateGroup wider = Wider(group);
        if (!_cells.TryGetValue((wider, subject), out UntoldCount? all))
        {
            return UntoldEvents.None;
        }

        if (group == wider)
        {
            return new UntoldEvents(all.Possible, all.Possible, all.Expected, 1);
        }

        (long possible, double expected) = _tellAll.GetValueOrDefault((wider, group.Grouping, subject));
        UntoldCount? own = Tells(group) ? _cells.GetValueOrDefault((group, subject)) : null;
        long open = all.Possible - possible, telling = told(wider) + possible, here = own?.Possible ?? 0;
        double share = telling == 0 ? 0 : (told(group) + here) / (double)telling;
        return new UntoldEvents(
            here + open, here, (own?.Expected ?? 0) + (Math.Max(0, all.Expected - expected) * share), telling == 0 ? 1 : 1 + (open / (double)telling));
    }

    private static RateGroup Wider(RateGroup group) =>
        group with { Grouping = group.Month is null ? "type" : "month", Brand = null, ModelFamily = null, AgeBand = null };

    private static bool Tells(RateGroup group) =>
        group.Brand != RateGroup.Unknown && group.ModelFamily != RateGroup.Unknown && group.AgeBand != RateGroup.Unknown;
}

/// <summary>What jobs that do not tell their machine may add to the events of one group.</summary>
/// <param name="MayBe">Cases that may belong to the group.</param>
/// <param name="Here">Those of them that belong to it if they are on the register.</param>
/// <param name="Expected">How many are expected to belong to it.</param>
/// <param name="Wider">Factor, 1 or more, by which the others raise the group's events if all of them are on the register.</param>
internal sealed record UntoldEvents(long MayBe, long Here, double Expected, double Wider)
{
    /// <summary>Nothing is untold.</summary>
    public static readonly UntoldEvents None = new(0, 0, 0, 1);

    /// <summary>The rate with the expected cases, from the lower limit of none to the upper limit of all.</summary>
    /// <param name="events">Told events.</param>
    /// <param name="exposure">For example hundreds of unit-years.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public Estimate Widen(long events, double exposure, double confidence)
    {
        Estimate told = EventRate.Garwood(events, exposure, confidence);
        return told.Value is null || MayBe == 0 ? told : Estimate.From(
            (events + Expected) / exposure, told.Lower, Wider * EventRate.Garwood(events + Here, exposure, confidence).Upper!.Value);
    }
}
