using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>What a budget buys on one van.</summary>
/// <param name="Van">The van.</param>
/// <param name="Budget">Money it may tie up.</param>
/// <param name="PlanMoney">Money the plan ties up.</param>
/// <param name="PlanCompletion">Expected share of jobs finished at the first visit, 0 to 1, or null if no job is expected.</param>
/// <param name="MostUsedCompletion">The same for most used first within the same money; null likewise.</param>
/// <param name="BestRuleCompletion">The best of the simple rules within the same money; null likewise.</param>
/// <param name="BoundCompletion">No load within this money is expected to finish more; null likewise.</param>
/// <param name="AboardCompletion">What was counted aboard, at the money it ties up; null at other budgets.</param>
public sealed record CurvePoint(
    string Van, decimal Budget, decimal PlanMoney, double? PlanCompletion, double? MostUsedCompletion, double? BestRuleCompletion, double? BoundCompletion,
    double? AboardCompletion);

/// <summary>Completion against budget.</summary>
public static class BudgetCurve
{
    private static readonly double[] Shares = [0.1, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 3];

    /// <summary>Points at shares of the van's budget, as most completions for the money, and one at the money that is aboard.</summary>
    /// <param name="planned">The plan.</param>
    /// <param name="van">Index of the van in the plan's view.</param>
    /// <param name="options">How vans are planned.</param>
    /// <param name="aboard">Pieces counted, by part, or null if not counted.</param>
    public static IReadOnlyList<CurvePoint> Create(PlannedVan planned, int van, VanPlanOptions options, int[]? aboard = null)
    {
        VanPlanOptions completions = options with { Objective = PlanObjective.Completions };
        PlannedVan free = VanPlanner.PlanVan(
            planned.View, planned.Van with { Budget = 0 }, planned.Demand, completions, LoadEffort.Quick, BookedDemand.None);
        var points = new List<CurvePoint>();
        long? tied = aboard is null ? null : planned.Usual.CostCents(aboard);
        foreach (long cents in Shares.Select(s => (long)Math.Round((double)planned.Van.Budget * s) * 100).Concat(tied is { } own ? [own] : []).Distinct().Order())
        {
            var limits = new LoadLimits(cents, planned.Van.Space);
            VanLoad plan = VanLoadPlanner.Plan(free.Usual.Within(limits), LoadEffort.Quick);
            int[] used = BaselineStock.MostUsed(planned.View, van, options, limits);
            int[] perCost = BaselineStock.MostUsedPerCost(planned.View, van, options, limits), poisson = BaselineStock.PoissonGreedy(planned.View, van, options, limits);
            double total = free.Usual.TotalWeight;
            points.Add(new CurvePoint(
                planned.Van.Van, cents / 100m, plan.CostCents / 100m,
                free.Completion(plan.Quantities), free.Completion(used), new[] { used, perCost, poisson }.Max(load => free.Completion(load)), total > 0 ? plan.Bound / total : null,
                aboard is not null && cents == tied ? free.Completion(aboard) : null));
        }

        return points;
    }

    /// <summary>Share of jobs the best load for some money is expected to finish, within the van's space; null when no job is expected.</summary>
    public static double? CompletionFor(PlannedVan planned, long cents, VanPlanOptions options)
    {
        VanPlanOptions completions = options with { Objective = PlanObjective.Completions };
        PlannedVan free = VanPlanner.PlanVan(planned.View, planned.Van with { Budget = 0 }, planned.Demand, completions, LoadEffort.Quick, BookedDemand.None);
        return free.Completion(VanLoadPlanner.Plan(free.Usual.Within(new LoadLimits(cents, planned.Van.Space)), LoadEffort.Quick).Quantities);
    }

    /// <summary>The least budget whose plan is expected to finish a wanted share of jobs; null when no money does within the space.</summary>
    public static decimal? BudgetFor(PlannedVan planned, double target, VanPlanOptions options)
    {
        VanPlanOptions completions = options with { Objective = PlanObjective.Completions };
        PlannedVan free = VanPlanner.PlanVan(planned.View, planned.Van with { Budget = 0 }, planned.Demand, completions, LoadEffort.Quick, BookedDemand.None);
        double? At(long cents) =>
            free.Completion(VanLoadPlanner.Plan(free.Usual.Within(new LoadLimits(cents, planned.Van.Space)), LoadEffort.Quick).Quantities);
        long high = 10_000;
        while (At(high) < target)
        {
            high *= 2;
            if (high > 100_000_000)
            {
                return null;
            }
        }

        long low = high / 2;
        while (high - low > 1000)
        {
            long middle = (low + high) / 2;
            (low, high) = At(middle) < target ? (middle, high) : (low, middle);
        }

        return high / 100m;
    }
}
