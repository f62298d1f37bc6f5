using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Months;

/// <summary>How many calls of one month turned out to need one thing.</summary>
/// <param name="Month">First day of the month of the call.</param>
/// <param name="Need">A component, or none (no part was needed), or other_part.</param>
/// <param name="Calls">Calls that needed it.</param>
/// <param name="CauseKnown">Calls of the month whose cause is known.</param>
/// <param name="Share">Calls / cause known.</param>
/// <param name="Lower">Lower end of Wilson's 95 % interval.</param>
/// <param name="Upper">Upper end.</param>
public sealed record MonthNeed(DateOnly Month, string Need, long Calls, long CauseKnown, double? Share, double? Lower, double? Upper)
{
    /// <summary>All months and needs of a session in which the month tables were built; a need that is not listed did not occur.</summary>
    public static IReadOnlyList<MonthNeed> Table(Database database) =>
        [.. database.ReadTable<NeedCount>("month_need_counts").Select(From)];

    private sealed record NeedCount(DateOnly Month, string Need, long Calls, long CauseKnown);

    private static MonthNeed From(NeedCount c)
    {
        Estimate share = Proportion.Wilson(c.Calls, c.CauseKnown);
        return new MonthNeed(c.Month, c.Need, c.Calls, c.CauseKnown, share.Value, share.Lower, share.Upper);
    }
}

/// <summary>How many calls of one month came from one model family.</summary>
/// <param name="Month">First day of the month of the call.</param>
/// <param name="ModelFamily">The family.</param>
/// <param name="ApplianceType">Its type, or null if unknown.</param>
/// <param name="Brand">Its brand, or null if unknown.</param>
/// <param name="Calls">Its calls.</param>
/// <param name="FamilyKnown">Calls of the month whose family is known.</param>
/// <param name="TopComponent">The component most often at fault, or null if none is known.</param>
/// <param name="Share">Calls / family known.</param>
/// <param name="Lower">Lower end of Wilson's 95 % interval.</param>
/// <param name="Upper">Upper end.</param>
public sealed record MonthFamily(
    DateOnly Month, string ModelFamily, string? ApplianceType, string? Brand, long Calls, long FamilyKnown, string? TopComponent, double? Share, double? Lower, double? Upper)
{
    /// <summary>All months and families of a session in which the month tables were built.</summary>
    public static IReadOnlyList<MonthFamily> Table(Database database) =>
        [.. database.ReadTable<FamilyCount>("month_family_counts").Select(From)];

    private sealed record FamilyCount(
        DateOnly Month, string ModelFamily, string? ApplianceType, string? Brand, long Calls, long FamilyKnown, string? TopComponent);

    private static MonthFamily From(FamilyCount c)
    {
        Estimate share = Proportion.Wilson(c.Calls, c.FamilyKnown);
        return new MonthFamily(
            c.Month, c.ModelFamily, c.ApplianceType, c.Brand, c.Calls, c.FamilyKnown, c.TopComponent, share.Value, share.Lower, share.Upper);
    }
}
