using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Rates;

/// <summary>How many appliances of a type there must be at least, judged from how often those that called have called.</summary>
/// <param name="ApplianceType">Type.</param>
/// <param name="UnitsSeen">Units with at least one call.</param>
/// <param name="UnitsSeenOnce">Of them with exactly one.</param>
/// <param name="UnitsSeenTwice">Of them with exactly two.</param>
/// <param name="CallsPerUnitSeen">Calls / units seen.</param>
/// <param name="LowerBound">Chao's (1987) lower bound, bias-corrected.</param>
/// <param name="IfAllAlike">Zero-truncated Poisson estimate, right only if all units call alike, or null if no unit called twice.</param>
public sealed record UnitPopulation(
    string ApplianceType, long UnitsSeen, long UnitsSeenOnce, long UnitsSeenTwice, double CallsPerUnitSeen, double LowerBound, double? IfAllAlike)
{
    /// <summary>All appliance types in a session where the rate tables were built.</summary>
    public static IReadOnlyList<UnitPopulation> Table(Database database) => [.. database
        .ReadTable<VisitCount>("unit_visits")
        .GroupBy(v => v.ApplianceType)
        .Select(g => Row(g.Key, g.ToDictionary(v => v.Visits, v => v.Units)))];

    private sealed record VisitCount(string ApplianceType, int Visits, long Units);

    private static UnitPopulation Row(string type, Dictionary<int, long> visits)
    {
        CaptureRecapture seen = CaptureRecapture.From(visits);
        return new UnitPopulation(
            type, seen.UnitsSeen, visits.GetValueOrDefault(1), visits.GetValueOrDefault(2), seen.MeanVisits!.Value, seen.LowerBoundCorrected, seen.UnitsByTruncatedPoisson);
    }
}
