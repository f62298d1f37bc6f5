using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>All age curves of a store: from registered appliances where there are any, and from the log alone.</summary>
/// <param name="Summaries">One row per curve.</param>
/// <param name="Points">One row per curve and quarter of a year.</param>
public sealed record AgeCurveTables(IReadOnlyList<AgeCurveSummary> Summaries, IReadOnlyList<AgeCurvePoint> Points)
{
    private const double DaysPerYear = 365.25;

    /// <summary>Estimates every curve from the counts gathered by SQL (age_ledger, part_ledger, truncated_ages).</summary>
    public static AgeCurveTables Create(Database database, LogOnlyOptions? options = null)
    {
        var summaries = new List<AgeCurveSummary>();
        var points = new List<AgeCurvePoint>();
        Register(database, summaries, points);
        LogOnly(database, options ?? new LogOnlyOptions(), summaries, points);
        return new AgeCurveTables(summaries, points);
    }

    private static void Register(Database database, List<AgeCurveSummary> summaries, List<AgeCurvePoint> points)
    {
        UntoldFactors untold = UntoldFactors.Read(database);
        Dictionary<CurveKey, AgeLedger> ledgers = database.ReadTable<LedgerDay>("age_ledger")
            .GroupBy(r => r.Key, r => new AgeLedgerRow(r.AgeDays / DaysPerYear, r.Entries, r.Exits, r.Failures))
            .ToDictionary(g => g.Key, g => AgeLedger.FromCounts([.. g]));
        Dictionary<(string, string), Estimate> shapes = database.ReadTable<ServiceDay>("part_ledger")
            .GroupBy(r => (r.ApplianceType, r.Component))
            .ToDictionary(g => g.Key, g => PartLife.Shape([.. g.GroupBy(r => r.ModelFamily)
                .Select(f => new PartService([.. f.Select(r => new ServiceEnd(r.Days / DaysPerYear, r.Parts, r.Failures))]))]));
        foreach ((CurveKey key, AgeLedger ledger) in ledgers.OrderBy(l => l.Key.ApplianceType, StringComparer.Ordinal)
            .ThenBy(l => l.Key.Component, StringComparer.Ordinal).ThenBy(l => l.Key.ModelFamily, StringComparer.Ordinal))
        {
            AgeLedger? others = key.ModelFamily == CurveKey.AllFamilies || ledger.Failures < WeibullFit.FewestFailures
                ? null
                : ledgers[key with { ModelFamily = CurveKey.AllFamilies }].Without(ledger);
            (AgeCurveSummary summary, IReadOnlyList<AgeCurvePoint> curve) = RegisterCurve.Fit(
                key, ledger, others, untold.Of(CurveBasis.Register, key.ApplianceType, key.Component), shapes.GetValueOrDefault((key.ApplianceType, key.Component)) ?? PartLife.Shape([]));
            summaries.Add(summary);
            points.AddRange(curve);
        }
    }

    private static void LogOnly(Database database, LogOnlyOptions options, List<AgeCurveSummary> summaries, List<AgeCurvePoint> points)
    {
        IReadOnlyList<TruncatedDays> rows = database.ReadTable<TruncatedDays>("truncated_ages");
        var curves = rows.GroupBy(r => r.Key with { ModelFamily = CurveKey.AllFamilies }, r => r.Age)
            .Concat(rows.GroupBy(r => r.Key, r => r.Age))
            .OrderBy(g => g.Key.ApplianceType, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Component, StringComparer.Ordinal).ThenBy(g => g.Key.ModelFamily, StringComparer.Ordinal);
        foreach (IGrouping<CurveKey, TruncatedAge> curve in curves)
        {
            (AgeCurveSummary summary, IReadOnlyList<AgeCurvePoint> shares) = LogOnlyCurve.Fit(curve.Key, [.. curve], options);
            summaries.Add(summary);
            points.AddRange(shares);
        }
    }

    private readonly record struct LedgerDay(string ApplianceType, string Component, string ModelFamily, int AgeDays, long Entries, long Exits, long Failures)
    {
        public CurveKey Key => new(ApplianceType, Component, ModelFamily);
    }

    private readonly record struct ServiceDay(string ApplianceType, string Component, string ModelFamily, int Days, long Parts, long Failures);

    private readonly record struct TruncatedDays(string ApplianceType, string Component, string ModelFamily, int AgeDays, int EarliestDays, int LatestDays)
    {
        public CurveKey Key => new(ApplianceType, Component, ModelFamily);

        public TruncatedAge Age => new(AgeDays / DaysPerYear, EarliestDays / DaysPerYear, LatestDays / DaysPerYear);
    }
}

/// <summary>Which curve: a component in one family, or in all families of an appliance type.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">For example drain_pump.</param>
/// <param name="ModelFamily">A family, or <see cref="AllFamilies"/>.</param>
internal sealed record CurveKey(string ApplianceType, string Component, string ModelFamily)
{
    /// <summary>Stands for every family of the type.</summary>
    public const string AllFamilies = "all";
}

/// <summary>What a curve or a chance rests on.</summary>
public static class CurveBasis
{
    /// <summary>Appliances a register lists, watched whether they fail or not.</summary>
    public const string Register = "register";

    /// <summary>Failures that the shop was called to, corrected for the ages the log cannot see: when they came, not how many fail.</summary>
    public const string LogOnly = "log_only";

    /// <summary>Appliances seen before, watched from the day after their first call: a return to this shop, not every failure.</summary>
    public const string UnitsSeen = "units_seen";
}
