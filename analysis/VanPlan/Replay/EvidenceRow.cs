using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

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
/// <param name="BestRule">The simple rule that did best on these jobs; null but for the plan.</param>
/// <param name="LeadBest">Share of jobs the plan finished more than that rule.</param>
/// <param name="LeadBestLower">Lower end of its 95 % interval.</param>
/// <param name="LeadBestUpper">Upper end.</param>
/// <param name="SetJobs">Of the jobs, those that needed two or more different parts.</param>
/// <param name="SetLead">The lead over the same rule on these alone, in shares of them, or null if there are none.</param>
/// <param name="SetLeadLower">Lower end of its 95 % interval.</param>
/// <param name="SetLeadUpper">Upper end.</param>
public sealed record EvidenceRow(
    string Quarter, string Van, ReplayPolicy Policy, int Jobs, int Finished, double? Completion, double? CompletionLower, double? CompletionUpper,
    double? Lead, double? LeadLower, double? LeadUpper, double? GapClosed, decimal Money, decimal StaleStock,
    ReplayPolicy? BestRule, double? LeadBest, double? LeadBestLower, double? LeadBestUpper, int SetJobs, double? SetLead, double? SetLeadLower, double? SetLeadUpper)
{
    private static readonly ReplayPolicy[] SimpleRules = [ReplayPolicy.MostUsed, ReplayPolicy.MostUsedPerCost, ReplayPolicy.PoissonGreedy];

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
        ReplayPolicy? best = SimpleRules.Where(by.Contains).Select(r => (ReplayPolicy?)r).MaxBy(r => by[r!.Value].Sum(x => x.Finished));
        foreach (var policy in by.OrderBy(p => p.Key))
        {
            var quarters = policy.Select(r => r.Quarter).ToHashSet();
            (double, double)[] weeks = Weeks(policy, null);
            (double, double)[] same = Weeks(by[ReplayPolicy.MostUsed], quarters);
            CompletionIntervals draws = weeks.Length == plain.Length ? bootstrap : new CompletionIntervals(weeks.Length, options.Draws, options.Seed);
            Estimate share = draws.Share(weeks);

            // Weeks that are all alike say nothing about other weeks.
            share = share is { Value: 0 or 1, Lower: not null } ? Proportion.Wilson(policy.Sum(r => r.Finished), policy.Sum(r => r.Jobs)) : share;
            Estimate? lead = policy.Key == ReplayPolicy.MostUsed || same.Length != weeks.Length ? null : draws.Lead(weeks, same);
            ReplayPolicy? rule = policy.Key == ReplayPolicy.Plan ? best : null;
            Estimate? over = rule is { } r ? draws.Lead(weeks, Weeks(by[r], null)) : null;
            Estimate? sets = rule is { } s ? draws.Lead(Weeks(policy, null, x => x.PartSets), Weeks(by[s], null, x => x.PartSets)) : null;
            yield return new EvidenceRow(
                quarter, van, policy.Key, policy.Sum(r => r.Jobs), policy.Sum(r => r.Finished), share.Value, share.Lower, share.Upper,
                lead?.Value, lead?.Lower, lead?.Upper, Closed(policy.Key, share.Value, by, quarters),
                policy.Sum(r => r.Money) / quarters.Count, policy.Sum(r => r.StaleStock) / quarters.Count,
                rule, over?.Value, over?.Lower, over?.Upper, policy.Sum(r => r.PartSets.Sum(w => w.Jobs)), sets?.Value, sets?.Lower, sets?.Upper);
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
    private static (double Finished, double Jobs)[] Weeks(
        IEnumerable<ReplayRow> rows, HashSet<string>? quarters, Func<ReplayRow, IReadOnlyList<(int Week, int Jobs, int Finished)>>? of = null) =>
        [.. rows.Where(r => quarters is null || quarters.Contains(r.Quarter))
            .SelectMany(r => (of?.Invoke(r) ?? r.Weeks).Select(w => (r.Quarter, w.Week, w.Jobs, w.Finished)))
            .GroupBy(w => (w.Quarter, w.Week))
            .OrderBy(g => g.Key.Quarter, StringComparer.Ordinal).ThenBy(g => g.Key.Week)
            .Select(g => ((double)g.Sum(w => w.Finished), (double)g.Sum(w => w.Jobs)))];
}
