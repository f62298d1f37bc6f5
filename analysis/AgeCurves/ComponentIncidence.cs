using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Share of registered appliances of a type whose first failure was of a component, by age. Intervals 95 %.</summary>
/// <remarks>
/// Failures whose jobs do not tell the machine (<see cref="UntoldFactor"/>): the share without failure is raised to the power
/// of the factor of all components, and each step down falls to the components by their failures times their own factor. The
/// lower limit is taken times S^(w - 1), as other components may come first more often, the upper one times the component's w:
/// with w the factor with all that may be, both are bounds.
/// </remarks>
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
        Table(database, UntoldFactors.Read(database));

    private static IReadOnlyList<ComponentIncidence> Table(Database database, UntoldFactors untold) =>
        [.. database.ReadTable<FirstCause>("first_causes")
            .GroupBy(r => r.ApplianceType)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .SelectMany(g => OfType(g.Key, [.. g], untold))];

    private sealed record FirstCause(string ApplianceType, int EntryDays, int ExitDays, string? Component);

    private static IEnumerable<ComponentIncidence> OfType(string type, IReadOnlyList<FirstCause> rows, UntoldFactors untold)
    {
        string[] components = [.. rows.Select(r => r.Component).OfType<string>().Distinct().Order(StringComparer.Ordinal)];
        AgeSpan[] spans = [.. rows.Select(r => new AgeSpan(
            r.EntryDays / DaysPerYear, r.ExitDays / DaysPerYear, r.Component is null ? AgeSpan.Working : 1 + Array.BinarySearch(components, r.Component, StringComparer.Ordinal)))];
        double? start = ConditionalStart.Find(AgeLedger.From(spans));
        AgeSpan[] steady = start is { } s ? [.. spans.Where(x => x.Exit > s).Select(x => x with { Entry = Math.Max(x.Entry, s) })] : spans;
        IReadOnlyList<CompetingPoint> steps = AalenJohansen.Estimate(steady, components.Length);
        UntoldFactor every = untold.OfRegister(type);
        UntoldFactor[] own = [.. components.Select(c => untold.Of(CurveBasis.Register, type, c))];
        double[] share = new double[components.Length];
        double survival = 1;
        int at = -1;
        for (int year = 1; steps.Count > 0 && year <= Math.Ceiling(steps[^1].Age); year++)
        {
            while (at + 1 < steps.Count && steps[at + 1].Age <= year)
            {
                at++;
                double[] falls = [.. own.Select((f, k) => f.Expected * (steps[at].ByCause[k].Share - (at == 0 ? 0 : steps[at - 1].ByCause[k].Share)))];
                double left = Math.Pow(steps[at].Survival, every.Expected), fall = falls.Sum();
                for (int k = 0; k < share.Length && fall > 0; k++)
                {
                    share[k] += (survival - left) * falls[k] / fall;
                }

                survival = left;
            }

            for (int k = 0; at >= 0 && k < components.Length; k++)
            {
                Incidence incidence = steps[at].ByCause[k];
                (double Lower, double Upper)? interval = Interval95.LogLog(incidence.Share, Math.Sqrt(incidence.AalenVariance));
                yield return new ComponentIncidence(
                    type, components[k], year, steps[at].AtRisk, Math.Min(1, share[k]),
                    interval is { } low ? Math.Min(share[k], low.Lower * Math.Pow(steps[at].Survival, every.Most - 1)) : null,
                    interval is { } high ? Math.Max(share[k], Math.Min(1, high.Upper * own[k].Most)) : null,
                    survival);
            }
        }
    }
}
