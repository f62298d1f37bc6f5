using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Mean number of repairs of a registered unit by age (<see cref="MeanCumulativeFunction"/>), counted from the first age at
/// which ten units are watched: before it one repair of one unit would be a whole repair more for all. Calls within the
/// callback window are one case.
/// </summary>
/// <remarks>
/// The interval is that of a weighted sum of Poisson counts (Fay and Feuer 1997): with v the variance and k = M^2/v repairs
/// in effect, M/k times the 2.5 % quantile of Gamma(k) and the 97.5 % quantile of Gamma(k + 1). v is the larger of the robust
/// and the Poisson variance, times n/(n - 1) for n units. Repairs whose jobs do not tell the machine raise the mean by the number
/// expected of them; the limits run from none of them to all of them (<see cref="UntoldFactor"/>).
/// </remarks>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="AgeYears">The age.</param>
/// <param name="AtRisk">Appliances watched at the step that holds at this age.</param>
/// <param name="MeanRepairs">Mean repairs per appliance up to this age.</param>
/// <param name="Lower">Lower end of its 95 % interval; null when there is none.</param>
/// <param name="Upper">Upper end of its 95 % interval; null when there is none.</param>
/// <param name="Condition">What the mean leaves out: repairs before the log, or null if nothing.</param>
public sealed record RepairsPerUnit(
    string ApplianceType, string ModelFamily, double AgeYears, long AtRisk, double MeanRepairs, double? Lower, double? Upper, string? Condition)
{
    private const double DaysPerYear = 365.25;
    private const int FewestUnits = 10;

    /// <summary>Estimates every type and family with at least ten units, from unit_repairs; ages are whole years.</summary>
    public static IReadOnlyList<RepairsPerUnit> Table(Database database)
    {
        var rows = database.ReadTable<WatchedUnit>("unit_repairs").Select(u => (
            Type: u.ApplianceType,
            Family: u.ModelFamily,
            History: new RepairHistory([new Watch(u.EntryDays / DaysPerYear, u.ExitDays / DaysPerYear)], [.. u.RepairDays.Select(d => d / DaysPerYear)]))).ToArray();
        UntoldFactors untold = UntoldFactors.Read(database);
        return [.. rows.GroupBy(r => (r.Type, Family: CurveKey.AllFamilies), r => r.History)
            .Concat(rows.GroupBy(r => (r.Type, r.Family), r => r.History))
            .Where(g => g.Count() >= FewestUnits)
            .OrderBy(g => g.Key.Type, StringComparer.Ordinal).ThenBy(g => g.Key.Family, StringComparer.Ordinal)
            .SelectMany(g => OfGroup(g.Key.Type, g.Key.Family, [.. g], untold.OfRegister(g.Key.Type)))];
    }

    private sealed record WatchedUnit(string ApplianceType, string ModelFamily, int EntryDays, int ExitDays, IReadOnlyList<int> RepairDays);

    private static IEnumerable<RepairsPerUnit> OfGroup(string type, string family, IReadOnlyList<RepairHistory> histories, UntoldFactor untold)
    {
        double from = Start(histories);
        RepairHistory[] later = [.. histories.Where(h => h.Watched[0].To > from)
            .Select(h => new RepairHistory([new Watch(Math.Max(from, h.Watched[0].From), h.Watched[0].To)], [.. h.Repairs.Where(r => r > from)]))];
        IReadOnlyList<MeanRepairsPoint> steps = MeanCumulativeFunction.Estimate(later).Points;
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
                (double lower, double upper) = Limits(steps[at], later.Length);
                yield return new RepairsPerUnit(type, family, year, steps[at].AtRisk, untold.Expected * steps[at].Mean, lower, untold.Most * upper, condition);
            }
        }
    }

    // The last age, before most units are watched, at which fewer than ten were.
    private static double Start(IReadOnlyList<RepairHistory> histories)
    {
        double[] entries = [.. histories.Select(h => h.Watched[0].From).Order()];
        double[] exits = [.. histories.Select(h => h.Watched[0].To).Order()];
        double[] ages = [.. entries.Concat(exits).Distinct().Order()];
        int[] watched = new int[ages.Length];
        for (int i = 0, entered = 0, left = 0; i < ages.Length; i++)
        {
            for (; entered < entries.Length && entries[entered] <= ages[i]; entered++)
            {
            }

            for (; left < exits.Length && exits[left] <= ages[i]; left++)
            {
            }

            watched[i] = entered - left;
        }

        int peak = Array.IndexOf(watched, watched.Max());
        int thin = Array.FindLastIndex(watched, peak, w => w < FewestUnits);
        return ages[Math.Min(thin + 1, peak)];
    }

    private static (double Lower, double Upper) Limits(MeanRepairsPoint step, int units)
    {
        double variance = Math.Max(step.RobustVariance, step.PoissonVariance) * units / (units - 1.0);
        double repairs = step.Mean * step.Mean / variance;
        return (step.Mean / repairs * new GammaDistribution(repairs, 1).Quantile(0.025), step.Mean / repairs * new GammaDistribution(repairs + 1, 1).Quantile(0.975));
    }
}
