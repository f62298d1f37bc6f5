using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.BadBatches;

/// <summary>All bad batches of a store.</summary>
/// <param name="Batches">Those found, the least likely by chance first.</param>
/// <param name="Jobs">The jobs behind them.</param>
/// <param name="Tests">Every family and component looked at.</param>
public sealed record BadBatchTables(IReadOnlyList<BadBatch> Batches, IReadOnlyList<BadBatchJob> Jobs, IReadOnlyList<BatchTest> Tests)
{
    private const double StillUnlikely = 0.05;

    /// <summary>Scans a store.</summary>
    public static BadBatchTables Create(Database database) => Create(BatchRows.Read(database), new EffectGate());

    /// <summary>
    /// Scans the build months of every family and component with enough cases, whether its calls rose in any month or not,
    /// and holds the share of false findings over all of them.
    /// </summary>
    /// <param name="rows">Calls and units.</param>
    /// <param name="gate">What a finding must pass: q at most 0.10, ratio at least 1.5, three cases.</param>
    public static BadBatchTables Create(BatchRows rows, EffectGate gate)
    {
        var series = rows.Calls
            .GroupBy(c => (Type: c.ApplianceType, Family: c.ModelFamily))
            .OrderBy(g => g.Key.Type, StringComparer.Ordinal).ThenBy(g => g.Key.Family, StringComparer.Ordinal)
            .SelectMany(g => g.Select(c => c.Component).Distinct().Where(c => c is not (Need.NoPart or Need.OtherPart)).Order(StringComparer.Ordinal)
                .Select(c => (g.Key.Type, g.Key.Family, Component: c, Calls: Ordered(g), All: BuildCohorts.From(Ordered(g), c, null)!)))
            .Where(s => s.All.Cases >= gate.Count)
            .ToArray();
        CohortScan?[] scans = [.. series.Select(s => CohortScan.Run(s.Calls, s.Component, gate.Count, gate.Ratio, gate.Q / series.Length))];
        int[] tried = [.. Enumerable.Range(0, scans.Length).Where(i => scans[i] is not null)];
        double[] adjusted = [.. PValues.BenjaminiHochberg([.. tried.Select(i => scans[i]!.P)])];
        Dictionary<int, double> q = tried.Zip(adjusted).ToDictionary(t => t.First, t => t.Second);
        bool Found(int i) => q.TryGetValue(i, out double value) && value <= gate.Q;
        int[] found = [.. tried.Where(Found).OrderBy(i => scans[i]!.P).ThenBy(i => i)];
        return new BadBatchTables(
            [.. found.Select(i => Describe(series[i].Type, series[i].Family, scans[i]!, q[i], rows, gate))],
            [.. found.SelectMany(i => Within(scans[i]!).Where(scans[i]!.Cohorts.IsCase)
                .Select(c => new BadBatchJob(series[i].Type, series[i].Family, series[i].Component, c.JobId)))],
            [.. series.Select((s, i) => new BatchTest(
                s.Type, s.Family, s.Component, s.All.Cases, s.All.Calls.Count, scans[i]?.Tried ?? 0, scans[i]?.P, q.TryGetValue(i, out double value) ? value : null, Found(i)))]);
    }

    private static BatchCall[] Ordered(IEnumerable<BatchCall> calls) => [.. calls.OrderBy(c => c.Month).ThenBy(c => c.JobId, StringComparer.Ordinal)];

    private static IEnumerable<BatchCall> Within(CohortScan scan) =>
        scan.Cohorts.Calls.Where(c => c.MadeMonth >= scan.Months.From && c.MadeMonth <= scan.Months.To);

    private static BadBatch Describe(string type, string family, CohortScan scan, double q, BatchRows rows, EffectGate gate)
    {
        BatchCall[] calls = [.. Within(scan)];
        BatchCall[] cases = [.. calls.Where(scan.Cohorts.IsCase)];
        HashSet<string> failed = [.. rows.Calls.Where(c => c.Component == scan.Cohorts.Component && c.UnitId is not null).Select(c => c.UnitId!)];
        BatchUnit[] units = [.. rows.Units.Where(u =>
            u.ApplianceType == type && u.ModelFamily == family && u.MadeMonth >= scan.Months.From && u.MadeMonth <= scan.Months.To)];
        BatchUnit[] waiting = [.. units.Where(u => !failed.Contains(u.UnitId))];
        var (largest, survives) = WithoutLargestCustomer(scan, cases, gate);
        return new BadBatch(
            type, family, scan.Cohorts.Component, Day(scan.Months.From), Day(scan.Months.To), scan.YoungerThan / 12,
            cases.Length, calls.Length, scan.Cohorts.Cases - cases.Length, scan.Cohorts.Calls.Count - calls.Length,
            scan.Cohorts.Against(scan.Months).Sum(t => t.Mean), scan.P, q, scan.Tried,
            scan.Cohorts.Calls.Count(c => c.MadeMonth > scan.Months.To), largest, survives,
            units.Length == 0 ? null : waiting.Length, units.Length == 0 ? null : waiting.Count(u => u.Registered));
    }

    private static (int Cases, bool Survives) WithoutLargestCustomer(CohortScan scan, BatchCall[] cases, EffectGate gate)
    {
        IGrouping<string, BatchCall>? largest = cases.Where(c => c.CustomerId is not null).GroupBy(c => c.CustomerId!, StringComparer.Ordinal)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault();
        if (largest is null)
        {
            return (0, true);
        }

        BuildCohorts? rest = BuildCohorts.From(scan.Cohorts.Calls.Where(c => c.CustomerId != largest.Key), scan.Cohorts.Component, scan.YoungerThan);
        if (rest is null)
        {
            return (largest.Count(), false);
        }

        FixedTotals[] totals = rest.Against(scan.Months);
        int left = rest.CasesIn(scan.Months);
        bool survives = gate.Passes(HypergeometricSum.AtLeast(totals, left) <= StillUnlikely ? 0 : 1, left / totals.Sum(t => t.Mean), left);
        return (largest.Count(), survives);
    }

    private static DateOnly Day(int month) => new(month / 12, month % 12 + 1, 1);
}
