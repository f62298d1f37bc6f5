using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Callbacks;

/// <summary>
/// Share of finished repairs that came back to this shop. Customers who went elsewhere leave no trace, so it is a lower
/// bound of repairs that did not hold.
/// </summary>
/// <param name="Days">Window after the repair, in days.</param>
/// <param name="Grouping">all, appliance_type, model_family, technician, complaint_kind, component or month (of the repair).</param>
/// <param name="Member">Which one.</param>
/// <param name="Repairs">Finished repairs of known units with a told complaint, followed for the whole window.</param>
/// <param name="Callbacks">Of them with a call on the same unit for the same complaint within the window.</param>
/// <param name="Share">Callbacks / repairs, or null if missing (see Missing).</param>
/// <param name="Lower">Lower end of Wilson's 95 % interval.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Returns">Of the repairs with any call on the same unit within the window.</param>
/// <param name="NotFollowed">Repairs whose window has not passed yet; they count for neither.</param>
/// <param name="Missing">Why there is no share; null when there is one.</param>
public sealed record CallbackShare(
    int Days, string Grouping, string Member, long Repairs, long Callbacks, double? Share, double? Lower, double? Upper, long Returns, long NotFollowed, string? Missing)
{
    /// <summary>Fewest repairs a share is given for.</summary>
    public const int FewestRepairs = 10;

    /// <summary>All windows and groups in a session where the callback tables were built.</summary>
    public static IReadOnlyList<CallbackShare> Table(Database database) =>
        [.. database.ReadTable<CallbackCount>("callback_counts").Select(From)];

    private sealed record CallbackCount(
        int Days, [Column("grouping_kind")] string Grouping, string Member, long Repairs, long Callbacks, long Returns, long NotFollowed);

    private static CallbackShare From(CallbackCount c)
    {
        Estimate share = c.Repairs < FewestRepairs
            ? Estimate.None($"too few: {c.Repairs} of {FewestRepairs} repairs")
            : Proportion.Wilson(c.Callbacks, c.Repairs);
        return new CallbackShare(c.Days, c.Grouping, c.Member, c.Repairs, c.Callbacks, share.Value, share.Lower, share.Upper, c.Returns, c.NotFollowed, share.Missing);
    }
}
