using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>One van's plan, with the demand it is for and the problem it solves.</summary>
/// <param name="Van">Limits of the van.</param>
/// <param name="View">The shop as it was known.</param>
/// <param name="Demand">What the van is expected to be asked for.</param>
/// <param name="Booked">Jobs already booked on it.</param>
/// <param name="Problem">The problem the plan solves: usual demand and booked jobs; its worth is per year.</param>
/// <param name="Usual">The same without the booked jobs: what a year is expected to bring.</param>
/// <param name="Plan">The kit and its bound.</param>
/// <param name="WorthPerJob">Worth of one job finished at the first visit in the problem's unit.</param>
public sealed record PlannedVan(VanLimits Van, ShopView View, VanDemand Demand, BookedDemand Booked, LoadProblem Problem, LoadProblem Usual, VanLoad Plan,
    double WorthPerJob)
{
    /// <summary>Pieces planned, by part.</summary>
    public IReadOnlyList<int> Target => Plan.Quantities;

    /// <summary>Expected share of the jobs of a usual year finished at the first visit, 0 to 1; null when no job is expected.</summary>
    public double? Completion(IReadOnlyList<int> kit) =>
        Usual.TotalWeight > 0 ? Usual.Worth([.. kit]) / Usual.TotalWeight : null;
}
