using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// How soon a replaced component was called for again on the same appliance. The clock starts at the replacement; a
/// written-off appliance is a competing end; the end of the log, or the day its number gave way to another design, is not an end of the part. A return to this shop:
/// households that called elsewhere are not seen.
/// </summary>
/// <param name="ApplianceType">For example washer, or all.</param>
/// <param name="Component">The replaced component.</param>
/// <param name="Supplier">Who supplied the part, or all.</param>
/// <param name="Days">Days since the replacement: 30 to 730.</param>
/// <param name="Replaced">Parts fitted.</param>
/// <param name="AtRisk">Parts that could still be seen to fail at the last step.</param>
/// <param name="FailedAgain">Failures within so many days.</param>
/// <param name="ShareFailed">Cumulative incidence, 0 to 1; null with a reason.</param>
/// <param name="Lower">Lower end of its 95 % interval; null when there is none.</param>
/// <param name="Upper">Upper end of its 95 % interval; null when there is none.</param>
/// <param name="Missing">Why there is no share; null when there is one.</param>
public sealed record ReplacedPartPoint(
    string ApplianceType, string Component, string Supplier, int Days, long Replaced, long? AtRisk, long FailedAgain, double? ShareFailed, double? Lower, double? Upper, string? Missing)
{
    /// <summary>Stands for every supplier, or every appliance type.</summary>
    public const string All = "all";

    /// <summary>Fewest parts fitted for a share.</summary>
    public const int FewestReplaced = 10;

    private static readonly int[] Horizons = [30, 60, 90, 180, 270, 365, 545, 730];

    /// <summary>Estimates components by type, and by supplier over all types, from replacement_spans.</summary>
    public static IReadOnlyList<ReplacedPartPoint> Table(Database database)
    {
        var rows = database.ReadTable<ReplacementSpan>("replacement_spans").Select(s => (
            Type: s.ApplianceType, s.Component, s.Supplier,
            Span: new AgeSpan(0, s.Days, s.Ending switch { ReplacementEnding.FailedAgain => 1, ReplacementEnding.WrittenOff => 2, _ => AgeSpan.Working }))).ToArray();
        return [.. rows.GroupBy(r => (r.Type, r.Component, Supplier: All), r => r.Span)
            .Concat(rows.GroupBy(r => (Type: All, r.Component, Supplier: All), r => r.Span))
            .Concat(rows.GroupBy(r => (Type: All, r.Component, r.Supplier), r => r.Span))
            .OrderBy(g => g.Key.Component, StringComparer.Ordinal).ThenBy(g => g.Key.Type, StringComparer.Ordinal).ThenBy(g => g.Key.Supplier, StringComparer.Ordinal)
            .SelectMany(g => OfGroup(g.Key.Type, g.Key.Component, g.Key.Supplier, [.. g]))];
    }

    private enum ReplacementEnding
    {
        FailedAgain,
        DesignChanged,
        WrittenOff,
        StillWorking,
    }

    private sealed record ReplacementSpan(string ApplianceType, string Component, string Supplier, int Days, ReplacementEnding Ending);

    private static IEnumerable<ReplacedPartPoint> OfGroup(string type, string component, string supplier, IReadOnlyList<AgeSpan> spans)
    {
        // A part fitted on the last day has not been watched yet.
        AgeSpan[] watched = [.. spans.Where(s => s.Exit > 0)];
        IReadOnlyList<CompetingPoint> steps = AalenJohansen.Estimate(watched, 2);
        foreach (int days in Horizons)
        {
            long again = watched.Count(s => s.Cause == 1 && s.Exit <= days);
            CompetingPoint? at = steps.LastOrDefault(p => p.Age <= days);
            long reached = watched.Count(s => s.Exit >= days);
            string? missing = watched.Length < FewestReplaced ? $"fewer than {FewestReplaced} replaced"
                : reached == 0 ? "none was fitted so long ago" : null;
            double share = at?.ByCause[0].Share ?? 0;
            (double Lower, double Upper)? interval = at is null ? null : Interval95.LogLog(share, Math.Sqrt(at.ByCause[0].AalenVariance));
            yield return new ReplacedPartPoint(
                type, component, supplier, days, spans.Count, missing is null ? reached : null, again,
                missing is null ? share : null, missing is null ? interval?.Lower : null, missing is null ? interval?.Upper : null, missing);
        }
    }
}
