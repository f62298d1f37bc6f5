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
    public static IReadOnlyList<MonthNeed> Table(Database database) => database.Read("Months/read_month_needs.sql", r =>
    {
        Estimate share = Proportion.Wilson(r.GetInt64(2), r.GetInt64(3));
        return new MonthNeed(r.Day(0)!.Value, r.GetString(1), r.GetInt64(2), r.GetInt64(3), share.Value, share.Lower, share.Upper);
    });
}

/// <summary>How many calls of one month came from one model family.</summary>
/// <param name="Month">First day of the month of the call.</param>
/// <param name="ModelFamily">The family.</param>
/// <param name="ApplianceType">Its type; null: unknown.</param>
/// <param name="Brand">Its brand; null: unknown.</param>
/// <param name="Calls">Its calls.</param>
/// <param name="FamilyKnown">Calls of the month whose family is known.</param>
/// <param name="TopComponent">The component most often at fault; null: none known.</param>
/// <param name="Share">Calls / family known.</param>
/// <param name="Lower">Lower end of Wilson's 95 % interval.</param>
/// <param name="Upper">Upper end.</param>
public sealed record MonthFamily(
    DateOnly Month, string ModelFamily, string? ApplianceType, string? Brand, long Calls, long FamilyKnown, string? TopComponent, double? Share, double? Lower, double? Upper)
{
    /// <summary>All months and families of a session in which the month tables were built.</summary>
    public static IReadOnlyList<MonthFamily> Table(Database database) => database.Read("Months/read_month_families.sql", r =>
    {
        Estimate share = Proportion.Wilson(r.GetInt64(4), r.GetInt64(5));
        return new MonthFamily(
            r.Day(0)!.Value, r.GetString(1), r.Text(2), r.Text(3), r.GetInt64(4), r.GetInt64(5), r.Text(6), share.Value, share.Lower, share.Upper);
    });
}
