using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Callbacks;

/// <summary>
/// Share of replaced parts whose component was replaced again on the same unit. The clock starts when the repair was
/// finished; parts not followed to the end of the stretch do not count. The first 30 days speak of workmanship and early
/// deaths, the next 60 of the part.
/// </summary>
/// <param name="Component">Component, or null for all.</param>
/// <param name="Supplier">Who supplied the part, or null for all; unknown if it cannot be told.</param>
/// <param name="Stretch">0-30, 31-90 (of those that passed the first 30) or 0-90 days after the repair.</param>
/// <param name="AtRisk">Parts followed to the end of the stretch that entered it working.</param>
/// <param name="ReplacedAgain">Of them replaced again within it.</param>
/// <param name="Share">ReplacedAgain / AtRisk, or null if missing (see Missing).</param>
/// <param name="Lower">Lower end of Wilson's 95 % interval.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Missing">Why there is no share; null when there is one.</param>
public sealed record RepeatFailure(
    string? Component, string? Supplier, string Stretch, long AtRisk, long ReplacedAgain, double? Share, double? Lower, double? Upper, string? Missing)
{
    /// <summary>Fewest parts a share is given for.</summary>
    public const int FewestParts = 10;

    /// <summary>All components, suppliers and stretches in a session where the callback tables were built.</summary>
    public static IReadOnlyList<RepeatFailure> Table(Database database) =>
        [.. database.ReadTable<RepeatCount>("repeat_counts").Select(From)];

    private sealed record RepeatCount(string? Component, string? Supplier, string Stretch, long AtRisk, long Again);

    private static RepeatFailure From(RepeatCount c)
    {
        Estimate share = c.AtRisk < FewestParts
            ? Estimate.None($"too few: {c.AtRisk} of {FewestParts} parts")
            : Proportion.Wilson(c.Again, c.AtRisk);
        return new RepeatFailure(c.Component, c.Supplier, c.Stretch, c.AtRisk, c.Again, share.Value, share.Lower, share.Upper, share.Missing);
    }
}
