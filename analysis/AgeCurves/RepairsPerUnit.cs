using System.Globalization;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Mean number of repairs of a registered appliance by age. Calls within the callback window are one case.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="AgeYears">The age.</param>
/// <param name="AtRisk">Appliances watched at the step that holds at this age.</param>
/// <param name="MeanRepairs">Mean repairs per appliance up to this age.</param>
/// <param name="Lower">Lower end of its 95 % interval (robust); null when there is none.</param>
/// <param name="Upper">Upper end of its 95 % interval; null when there is none.</param>
/// <param name="Condition">What the mean leaves out: repairs before the log, or null if nothing.</param>
public sealed record RepairsPerUnit(
    string ApplianceType, string ModelFamily, double AgeYears, long AtRisk, double MeanRepairs, double? Lower, double? Upper, string? Condition)
{
    private const double DaysPerYear = 365.25;
    private const int FewestUnits = 5;

    /// <summary>Estimates every type and family with at least five appliances, from unit_repairs; ages are whole years.</summary>
    public static IReadOnlyList<RepairsPerUnit> Table(Database database)
    {
        var rows = database.ReadTable<WatchedUnit>("unit_repairs").Select(u => (
            Type: u.ApplianceType,
            Family: u.ModelFamily,
            History: new RepairHistory([new Watch(u.EntryDays / DaysPerYear, u.ExitDays / DaysPerYear)], [.. u.RepairDays.Select(d => d / DaysPerYear)]))).ToArray();
        return [.. rows.GroupBy(r => (r.Type, Family: CurveKey.AllFamilies), r => r.History)
            .Concat(rows.GroupBy(r => (r.Type, r.Family), r => r.History))
            .Where(g => g.Count() >= FewestUnits)
            .OrderBy(g => g.Key.Type, StringComparer.Ordinal).ThenBy(g => g.Key.Family, StringComparer.Ordinal)
            .SelectMany(g => OfGroup(g.Key.Type, g.Key.Family, [.. g]))];
    }

    private sealed record WatchedUnit(string ApplianceType, string ModelFamily, int EntryDays, int ExitDays, IReadOnlyList<int> RepairDays);

    private static IEnumerable<RepairsPerUnit> OfGroup(string type, string family, IReadOnlyList<RepairHistory> histories)
    {
        IReadOnlyList<MeanRepairsPoint> steps = MeanCumulativeFunction.Estimate(histories).Points;
        double from = histories.Min(h => h.Watched[0].From);
        string? condition = from > 0 ? string.Create(CultureInfo.InvariantCulture, $"counted from {from:0.0} years of age") : null;
        int at = -1;
        for (int year = 1; steps.Count > 0 && year <= Math.Ceiling(steps[^1].Age); year++)
        {
            while (at + 1 < steps.Count && steps[at + 1].Age <= year)
            {
                at++;
            }

            if (at >= 0 && steps[at].AtRisk >= FewestUnits)
            {
                yield return new RepairsPerUnit(type, family, year, steps[at].AtRisk, steps[at].Mean, steps[at].Lower, steps[at].Upper, condition);
            }
        }
    }
}
