using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Pipeline.Planning;

/// <summary>The section <c>van</c> of the run record. Keys that need the true demand of a simulated shop are null.</summary>
internal static class VanRecord
{
    private static readonly JsonSerializerOptions OptionsFormat = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    public static JsonObject Create(ShopPlan plan, BookedJobs booked, ReplayEvidence evidence, IReadOnlyList<EvidenceRow> rows, DateOnly asOf, VanPlanOptions options)
    {
        EvidenceRow? All(ReplayPolicy policy) => rows.SingleOrDefault(r => r.Quarter == "all" && r.Van == "all" && r.Policy == policy);
        (decimal budget, double gained, double bound) = plan.Totals;
        EvidenceRow? ours = All(ReplayPolicy.Plan);
        return new JsonObject
        {
            ["jobs_replayed"] = ours?.Jobs ?? 0,
            ["completion_plan"] = Rounded(ours?.Completion),
            ["completion_most_used"] = Rounded(All(ReplayPolicy.MostUsed)?.Completion),
            ["completion_most_used_per_cost"] = Rounded(All(ReplayPolicy.MostUsedPerCost)?.Completion),
            ["completion_poisson_greedy"] = Rounded(All(ReplayPolicy.PoissonGreedy)?.Completion),
            ["completion_hindsight"] = Rounded(All(ReplayPolicy.Hindsight)?.Completion),
            ["gap_closed"] = Rounded(ours?.GapClosed),
            ["lead"] = Rounded(ours?.Lead),
            ["lead_lower"] = Rounded(ours?.LeadLower),
            ["lead_upper"] = Rounded(ours?.LeadUpper),
            ["best_rule"] = ours?.BestRule is { } rule ? JsonNamingPolicy.SnakeCaseLower.ConvertName(rule.ToString()) : null,
            ["lead_best"] = Rounded(ours?.LeadBest),
            ["lead_best_lower"] = Rounded(ours?.LeadBestLower),
            ["lead_best_upper"] = Rounded(ours?.LeadBestUpper),
            ["set_jobs"] = ours?.SetJobs,
            ["set_lead"] = Rounded(ours?.SetLead),
            ["set_lead_lower"] = Rounded(ours?.SetLeadLower),
            ["set_lead_upper"] = Rounded(ours?.SetLeadUpper),
            ["bound_gap"] = bound > 0 ? Rounded((bound - gained) / bound) : null,
            ["budget"] = budget,
            ["money_used"] = plan.Summaries.Sum(s => s.MoneyUsed),
            ["jobs_not_repaired"] = evidence.NotRepaired,
            ["jobs_parts_not_told"] = evidence.NotTold,
            ["true_demand_attained"] = null,
            ["true_demand_attained_most_used"] = null,
            ["as_of"] = asOf.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            ["options"] = JsonSerializer.SerializeToNode(options, OptionsFormat),
            ["booked_jobs"] = booked.Needs.Count,
            ["booked_note"] = booked.Note,
            ["by_quarter"] = new JsonArray([.. rows.Where(r => r.Van == "all" && r.Quarter != "all" && r.Policy == ReplayPolicy.Plan).Select(r => (JsonNode)Quarter(r, rows))]),
            ["dead_stock"] = plan.Dead.Sum(d => d.Money),
            ["vans"] = new JsonArray([.. plan.Summaries.Select(s => (JsonNode)Van(s))]),
        };
    }

    private static JsonObject Quarter(EvidenceRow plan, IReadOnlyList<EvidenceRow> rows)
    {
        double? Completion(ReplayPolicy policy) => rows.SingleOrDefault(r => r.Quarter == plan.Quarter && r.Van == "all" && r.Policy == policy)?.Completion;
        return new JsonObject
        {
            ["quarter"] = plan.Quarter,
            ["jobs"] = plan.Jobs,
            ["completion_plan"] = Rounded(plan.Completion),
            ["completion_most_used"] = Rounded(Completion(ReplayPolicy.MostUsed)),
            ["completion_most_used_per_cost"] = Rounded(Completion(ReplayPolicy.MostUsedPerCost)),
            ["completion_hindsight"] = Rounded(Completion(ReplayPolicy.Hindsight)),
            ["completion_counted"] = Rounded(Completion(ReplayPolicy.Counted)),
            ["gap_closed"] = Rounded(plan.GapClosed),
            ["money"] = plan.Money,
            ["stale_stock"] = plan.StaleStock,
        };
    }

    private static JsonObject Van(VanSummary van) => new()
    {
        ["van"] = van.Van,
        ["budget"] = van.Budget,
        ["money_used"] = van.MoneyUsed,
        ["space_used"] = van.SpaceUsed,
        ["parts"] = van.Parts,
        ["pieces"] = van.Pieces,
        ["completion_expected"] = Rounded(van.Completion),
        ["completion_counted"] = Rounded(van.CompletionCounted),
        ["money_counted"] = van.MoneyCounted,
        ["completion_for_counted_money"] = Rounded(van.CompletionForCounted),
        ["booked_jobs"] = van.BookedJobs,
        ["booked_finished"] = Rounded(van.BookedFinished),
        ["waiting_jobs"] = van.WaitingJobs,
        ["bound_gap"] = Rounded(van.BoundGap),
        ["method"] = van.Method,
        ["answer"] = van.Answer,
    };

    private static double? Rounded(double? value) => value is { } v ? Math.Round(v, 6) : null;
}
