using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A van's plan in one line.</summary>
/// <param name="Van">The van.</param>
/// <param name="Budget">Money it may tie up.</param>
/// <param name="Space">Space units it has.</param>
/// <param name="MoneyUsed">Money the plan ties up.</param>
/// <param name="SpaceUsed">Space units the plan takes.</param>
/// <param name="Parts">Different parts.</param>
/// <param name="Pieces">Pieces.</param>
/// <param name="JobsPerYear">Settled jobs expected.</param>
/// <param name="Completion">Expected share finished at the first visit with the plan, 0 to 1, or null if no job is expected.</param>
/// <param name="CompletionEmpty">The same with an empty van: jobs that need no part.</param>
/// <param name="CompletionCounted">The same with what was counted aboard, less what is set aside for waiting jobs, or null if not counted.</param>
/// <param name="MoneyCounted">Money in the same, at today's prices, or null if not counted.</param>
/// <param name="CompletionForCounted">What the best load for that same money is expected to finish: the like to compare with what is aboard; null likewise.</param>
/// <param name="PiecesCounted">Pieces of the same, or null if not counted.</param>
/// <param name="SecondVisitsAvoided">Second visits a year the plan avoids against an empty van.</param>
/// <param name="BookedJobs">Jobs booked on the van and not yet visited.</param>
/// <param name="BookedFinished">Of these expected to be finished at the first visit with the plan and what is taken along for them.</param>
/// <param name="WaitingJobs">Open jobs that wait for an ordered part; it is set aside for them.</param>
/// <param name="BoundGap">The best possible plan for this demand is at most so much better, 0 to 1.</param>
/// <param name="Method">Which search found the plan.</param>
/// <param name="Answer">The same in words.</param>
public sealed record VanSummary(
    string Van, decimal Budget, double Space, decimal MoneyUsed, double SpaceUsed, int Parts, int Pieces, double JobsPerYear,
    double? Completion, double? CompletionEmpty, double? CompletionCounted, decimal? MoneyCounted, double? CompletionForCounted, int? PiecesCounted,
    double SecondVisitsAvoided, int BookedJobs, double BookedFinished, int WaitingJobs, double BoundGap, string Method, string Answer)
{
    /// <summary>Sums a plan up.</summary>
    /// <param name="planned">The plan.</param>
    /// <param name="aboard">Pieces counted, by part, or null if not counted.</param>
    /// <param name="calls">What booked calls may need.</param>
    /// <param name="waiting">Open jobs of the van that wait for an ordered part.</param>
    /// <param name="options">How vans are planned.</param>
    public static VanSummary From(PlannedVan planned, IReadOnlyList<int>? aboard, IReadOnlyList<BookedRow> calls, int waiting, VanPlanOptions options)
    {
        double worth = planned.WorthPerJob;
        string? refused = PlanRefusal.Reason(planned);
        int[] load = refused is null ? [.. planned.Target] : new int[planned.Target.Count];
        int[] taken = [.. load];
        foreach (BookedRow call in calls.Where(c => c.Van == planned.Van.Van && c.TakeAlong > 0))
        {
            taken[planned.View.IndexOf(call.PartNumber)] += call.TakeAlong;
        }

        double jobs = planned.Usual.TotalWeight / worth;
        double? completion = planned.Completion(load);
        return new VanSummary(
            planned.Van.Van, planned.Van.Budget, planned.Van.Space, refused is null ? planned.Plan.CostCents / 100m : 0, refused is null ? planned.Plan.Space : 0,
            load.Count(k => k > 0), load.Sum(), jobs, completion, planned.Completion(new int[load.Length]),
            aboard is null ? null : planned.Completion(aboard),
            aboard is null ? null : planned.Usual.CostCents([.. aboard]) / 100m,
            aboard is null || refused is not null ? null : BudgetCurve.CompletionFor(planned, planned.Usual.CostCents([.. aboard]), options), aboard?.Sum(),
            (planned.Usual.Worth(load) - planned.Usual.AlwaysDone) / worth,
            planned.Booked.Jobs.Count, planned.Booked.Finished(taken), waiting, planned.Plan.Gap, MethodOf(planned.Plan), refused ?? Say(planned));
    }

    private static string MethodOf(VanLoad plan) =>
        plan.SolverMissing ? $"{plan.Method}, managed search only: the integer solver's library is missing" : plan.Method.ToString();

    private static string Say(PlannedVan planned)
    {
        if (planned.Target.All(t => t == 0))
        {
            return planned.View.Parts.Any(p => p.PriceCents <= planned.Usual.Limits.BudgetCents && p.Space <= planned.Van.Space)
                ? "no part is worth carrying at these costs"
                : "no part fits this money and space";
        }

        return planned.Demand.JobsSeen < 50 ? "few jobs seen: take this plan as a first guess" : "planned";
    }
}
