using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>All age curves of a store: from registered appliances where there are any, and from the log alone.</summary>
/// <param name="Summaries">One row per curve.</param>
/// <param name="Points">One row per curve and quarter of a year.</param>
public sealed record AgeCurveTables(IReadOnlyList<AgeCurveSummary> Summaries, IReadOnlyList<AgeCurvePoint> Points)
{
    private const double DaysPerYear = 365.25;

    /// <summary>Estimates every curve from the counts gathered by SQL (age_ledger, truncated_ages).</summary>
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
        var keys = new OneKey();
        IReadOnlyList<(CurveKey Key, AgeLedgerRow Row)> rows = database.Query("from age_ledger", r => (
            keys.Of(r.GetString(1), r.GetString(0), r.GetString(2)),
            new AgeLedgerRow(r.Int(3) / DaysPerYear, r.Long(4)!.Value, r.Long(5)!.Value, r.Long(6)!.Value)));
        Dictionary<CurveKey, AgeLedger> ledgers = rows
            .GroupBy(r => r.Key, r => r.Row)
            .ToDictionary(g => g.Key, g => AgeLedger.FromCounts([.. g]));
        foreach ((CurveKey key, AgeLedger ledger) in ledgers.OrderBy(l => l.Key.ApplianceType, StringComparer.Ordinal)
            .ThenBy(l => l.Key.Component, StringComparer.Ordinal).ThenBy(l => l.Key.ModelFamily, StringComparer.Ordinal))
        {
            AgeLedger? others = key.ModelFamily == CurveKey.AllFamilies || ledger.Failures < WeibullFit.FewestFailures
                ? null
                : ledgers[key with { ModelFamily = CurveKey.AllFamilies }].Without(ledger);
            (AgeCurveSummary summary, IReadOnlyList<AgeCurvePoint> curve) = RegisterCurve.Fit(key, ledger, others);
            summaries.Add(summary);
            points.AddRange(curve);
        }
    }

    private static void LogOnly(Database database, LogOnlyOptions options, List<AgeCurveSummary> summaries, List<AgeCurvePoint> points)
    {
        var keys = new OneKey();
        IReadOnlyList<(CurveKey Key, TruncatedAge Age)> rows = database.Query("from truncated_ages", r => (
            keys.Of(r.GetString(1), r.GetString(0), r.GetString(2)),
            new TruncatedAge(r.Int(4) / DaysPerYear, r.Int(5) / DaysPerYear, r.Int(6) / DaysPerYear)));
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

    // Rows of one curve follow each other: one key serves them all, however many there are.
    private sealed class OneKey
    {
        private CurveKey _last = new("", "", "");

        public CurveKey Of(string type, string component, string family) =>
            _last.ApplianceType == type && _last.Component == component && _last.ModelFamily == family ? _last : _last = new CurveKey(type, component, family);
    }
}
