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
/// <param name="CompletionCounted">The same with what was counted aboard, or null if not counted.</param>
/// <param name="MoneyCounted">Money in what was counted aboard, at today's prices: compare completions only at equal money, or null if not counted.</param>
/// <param name="PiecesCounted">Pieces counted aboard, or null if not counted.</param>
/// <param name="SecondVisitsAvoided">Second visits a year the plan avoids against an empty van.</param>
/// <param name="BookedJobs">Jobs booked on the van and not yet seen that the plan reckons with.</param>
/// <param name="BookedFinished">Of these expected to be finished at the first visit with the plan.</param>
/// <param name="BoundGap">The best possible plan for this demand is at most so much better, 0 to 1.</param>
/// <param name="Method">Which search found the plan.</param>
/// <param name="Answer">The same in words.</param>
public sealed record VanSummary(
    string Van, decimal Budget, double Space, decimal MoneyUsed, double SpaceUsed, int Parts, int Pieces, double JobsPerYear,
    double? Completion, double? CompletionEmpty, double? CompletionCounted, decimal? MoneyCounted, int? PiecesCounted,
    double SecondVisitsAvoided, int BookedJobs, double BookedFinished, double BoundGap, string Method, string Answer)
{
    /// <summary>Sums a plan up.</summary>
    /// <param name="planned">The plan.</param>
    /// <param name="aboard">Pieces counted, by part, or null if not counted.</param>
    public static VanSummary From(PlannedVan planned, IReadOnlyList<int>? aboard)
    {
        double worth = planned.WorthPerJob;
        int[] load = [.. planned.Target];
        double jobs = planned.Usual.TotalWeight / worth;
        double? completion = planned.Completion(load);
        return new VanSummary(
            planned.Van.Van, planned.Van.Budget, planned.Van.Space, planned.Plan.CostCents / 100m, planned.Plan.Space,
            load.Count(k => k > 0), load.Sum(), jobs, completion, planned.Completion(new int[load.Length]),
            aboard is null ? null : planned.Completion(aboard),
            aboard is null ? null : planned.Usual.CostCents([.. aboard]) / 100m, aboard?.Sum(),
            (planned.Usual.Worth(load) - planned.Usual.AlwaysDone) / worth,
            planned.Booked.Jobs.Count, planned.Booked.Finished(load), planned.Plan.Gap, MethodOf(planned.Plan), Say(planned, jobs));
    }

    private static string MethodOf(VanLoad plan) =>
        plan.SolverMissing ? $"{plan.Method}, managed search only: the integer solver's library is missing" : plan.Method.ToString();

    private static string Say(PlannedVan planned, double jobs)
    {
        if (jobs <= 0)
        {
            return "no settled job tells what this van needs yet";
        }

        if (planned.Target.All(t => t == 0))
        {
            return planned.View.Parts.Any(p => p.PriceCents <= planned.Problem.Limits.BudgetCents && p.Space <= planned.Van.Space)
                ? "no part is worth carrying at these costs"
                : "no part fits this money and space";
        }

        if (planned.View.Parts.All(p => !p.PriceKnown))
        {
            return "no price of any part is known, so this plan is held by space alone and its money says nothing";
        }

        return planned.Demand.JobsSeen < 50 ? "few jobs seen: take this plan as a first guess" : "planned";
    }
}
