using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Share of registered appliances of a type whose first failure was of a component, by age. Intervals 95 %.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">The component that failed first.</param>
/// <param name="AgeYears">The age.</param>
/// <param name="AtRisk">Appliances at risk at the step that holds at this age.</param>
/// <param name="ShareFailed">Cumulative incidence, 0 to 1; with those of all components and NoFailure it adds up to 1.</param>
/// <param name="Lower">Lower end (log-log, Aalen's variance); null when there is none.</param>
/// <param name="Upper">Upper end; null when there is none.</param>
/// <param name="NoFailure">Share without any failure by this age.</param>
public sealed record ComponentIncidence(
    string ApplianceType, string Component, double AgeYears, long AtRisk, double ShareFailed, double? Lower, double? Upper, double NoFailure)
{
    private const double DaysPerYear = 365.25;

    /// <summary>Estimates all components of every type together, from first_causes; ages are whole years.</summary>
    public static IReadOnlyList<ComponentIncidence> Table(Database database) =>
        [.. database.ReadTable<FirstCause>("first_causes")
            .GroupBy(r => r.ApplianceType)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .SelectMany(g => OfType(g.Key, [.. g]))];

    private sealed record FirstCause(string ApplianceType, int EntryDays, int ExitDays, string? Component);

    private static IEnumerable<ComponentIncidence> OfType(string type, IReadOnlyList<FirstCause> rows)
    {
        string[] components = [.. rows.Select(r => r.Component).OfType<string>().Distinct().Order(StringComparer.Ordinal)];
        AgeSpan[] spans = [.. rows.Select(r => new AgeSpan(
            r.EntryDays / DaysPerYear, r.ExitDays / DaysPerYear, r.Component is null ? AgeSpan.Working : 1 + Array.BinarySearch(components, r.Component, StringComparer.Ordinal)))];
        double? start = ConditionalStart.Find(AgeLedger.From(spans));
        AgeSpan[] steady = start is { } s ? [.. spans.Where(x => x.Exit > s).Select(x => x with { Entry = Math.Max(x.Entry, s) })] : spans;
        IReadOnlyList<CompetingPoint> steps = AalenJohansen.Estimate(steady, components.Length);
        int at = -1;
        for (int year = 1; steps.Count > 0 && year <= Math.Ceiling(steps[^1].Age); year++)
        {
            while (at + 1 < steps.Count && steps[at + 1].Age <= year)
            {
                at++;
            }

            for (int k = 0; at >= 0 && k < components.Length; k++)
            {
                Incidence incidence = steps[at].ByCause[k];
                (double Lower, double Upper)? interval = Interval95.LogLog(incidence.Share, Math.Sqrt(incidence.AalenVariance));
                yield return new ComponentIncidence(
                    type, components[k], year, steps[at].AtRisk, Math.Min(1, incidence.Share), interval?.Lower, interval?.Upper, steps[at].Survival);
            }
        }
    }
}
