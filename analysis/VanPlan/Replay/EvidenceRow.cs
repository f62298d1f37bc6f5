using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>Replay of one policy over a quarter and van, or over all.</summary>
/// <param name="Quarter">For example 2026Q3; all: every quarter.</param>
/// <param name="Van">The van; all: every van.</param>
/// <param name="Policy">How the vans were stocked.</param>
/// <param name="Jobs">Jobs replayed.</param>
/// <param name="Finished">Of these finished at the first visit.</param>
/// <param name="Completion">Share finished, 0 to 1, or null if there are no jobs.</param>
/// <param name="CompletionLower">Lower end of its 95 % interval (week blocks), or null if there are too few weeks.</param>
/// <param name="CompletionUpper">Upper end.</param>
/// <param name="Lead">Share of jobs finished more than with most used first; null for that policy itself.</param>
/// <param name="LeadLower">Lower end of its 95 % interval.</param>
/// <param name="LeadUpper">Upper end.</param>
/// <param name="GapClosed">Share of the way from most used first to hindsight, or null if there is none.</param>
/// <param name="Money">Money tied up, mean over quarters, all vans of the row.</param>
/// <param name="StaleStock">Of this in pieces nobody asked for in the quarter.</param>
public sealed record EvidenceRow(
    string Quarter, string Van, ReplayPolicy Policy, int Jobs, int Finished, double? Completion, double? CompletionLower, double? CompletionUpper,
    double? Lead, double? LeadLower, double? LeadUpper, double? GapClosed, decimal Money, decimal StaleStock)
{
    /// <summary>All rows: per quarter and van, per quarter, per van, and over all.</summary>
    public static IReadOnlyList<EvidenceRow> From(IReadOnlyList<ReplayRow> rows, VanPlanOptions options)
    {
        var table = new List<EvidenceRow>();
        foreach (var (quarter, van) in rows.SelectMany(r => new[] { (r.Quarter, r.Van), (r.Quarter, "all"), ("all", r.Van), ("all", "all") }).Distinct()
            .OrderBy(k => k.Item1, StringComparer.Ordinal).ThenBy(k => k.Item2, StringComparer.Ordinal))
        {
            ReplayRow[] part = [.. rows.Where(r => (quarter == "all" || r.Quarter == quarter) && (van == "all" || r.Van == van))];
            table.AddRange(Group(quarter, van, part, options));
        }

        return table;
    }

    private static IEnumerable<EvidenceRow> Group(string quarter, string van, ReplayRow[] rows, VanPlanOptions options)
    {
        ILookup<ReplayPolicy, ReplayRow> by = rows.ToLookup(r => r.Policy);
        (double, double)[] plain = Weeks(by[ReplayPolicy.MostUsed], null);
        var bootstrap = new CompletionIntervals(plain.Length, options.Draws, options.Seed);
        foreach (var policy in by.OrderBy(p => p.Key))
        {
            var quarters = policy.Select(r => r.Quarter).ToHashSet();
            (double, double)[] weeks = Weeks(policy, null);
            (double, double)[] same = Weeks(by[ReplayPolicy.MostUsed], quarters);
            CompletionIntervals draws = weeks.Length == plain.Length ? bootstrap : new CompletionIntervals(weeks.Length, options.Draws, options.Seed);
            Estimate share = draws.Share(weeks);
            Estimate? lead = policy.Key == ReplayPolicy.MostUsed || same.Length != weeks.Length ? null : draws.Lead(weeks, same);
            yield return new EvidenceRow(
                quarter, van, policy.Key, policy.Sum(r => r.Jobs), policy.Sum(r => r.Finished), share.Value, share.Lower, share.Upper,
                lead?.Value, lead?.Lower, lead?.Upper, Closed(policy.Key, share.Value, by, quarters),
                policy.Sum(r => r.Money) / quarters.Count, policy.Sum(r => r.StaleStock) / quarters.Count);
        }
    }

    private static double? Closed(ReplayPolicy policy, double? share, ILookup<ReplayPolicy, ReplayRow> by, HashSet<string> quarters)
    {
        double? Share(ReplayPolicy p) => by[p].Where(r => quarters.Contains(r.Quarter)).ToArray() is { Length: > 0 } r && r.Sum(x => x.Jobs) is var n && n > 0
            ? (double)r.Sum(x => x.Finished) / n : null;
        return policy is ReplayPolicy.MostUsed or ReplayPolicy.Hindsight || share is null
            ? null
            : Share(ReplayPolicy.MostUsed) is { } plain && Share(ReplayPolicy.Hindsight) is { } best ? GapShare.From(share.Value, plain, best) : null;
    }

    /// <summary>Jobs finished, and jobs, per calendar week of each quarter, over the vans.</summary>
    private static (double Finished, double Jobs)[] Weeks(IEnumerable<ReplayRow> rows, HashSet<string>? quarters) =>
        [.. rows.Where(r => quarters is null || quarters.Contains(r.Quarter))
            .SelectMany(r => r.Weeks.Select(w => (r.Quarter, w.Week, w.Jobs, w.Finished)))
            .GroupBy(w => (w.Quarter, w.Week))
            .OrderBy(g => g.Key.Quarter, StringComparer.Ordinal).ThenBy(g => g.Key.Week)
            .Select(g => ((double)g.Sum(w => w.Finished), (double)g.Sum(w => w.Jobs)))];
}
