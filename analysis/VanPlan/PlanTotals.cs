namespace PartsSignal.Analysis.VanPlan;

/// <summary>Sums over the plans of all vans.</summary>
/// <param name="Budget">Money the vans may tie up.</param>
/// <param name="Gained">Worth of the plans a year beyond empty vans.</param>
/// <param name="Bound">The same of the best possible plans, at most.</param>
public sealed record PlanTotals(decimal Budget, double Gained, double Bound)
{
    /// <summary>Adds plans up.</summary>
    public static PlanTotals From(IReadOnlyList<PlannedVan> plans) => new(
        plans.Sum(p => p.Van.Budget), plans.Sum(p => p.Plan.Value - p.Plan.AlwaysDone), plans.Sum(p => p.Plan.Bound - p.Plan.AlwaysDone));
}
