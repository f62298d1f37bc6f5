namespace PartsSignal.Analysis.VanPlan;

/// <summary>What a plan is worth.</summary>
public enum PlanObjective
{
    /// <summary>Money a year: second visits avoided, less holding, less loss on pieces that go stale.</summary>
    Money,

    /// <summary>Most jobs finished at the first visit for the budget.</summary>
    Completions,
}

/// <summary>Limits of one van.</summary>
/// <param name="Van">Its name in the job log.</param>
/// <param name="Budget">Money for its stock, 0 or more.</param>
/// <param name="Space">Space units, 0 or more.</param>
public sealed record VanLimits(string Van, decimal Budget, double Space);

/// <summary>How vans are planned and judged.</summary>
public sealed record VanPlanOptions
{
    /// <summary>The vans; empty: those of the job log's history window, with the default limits.</summary>
    public IReadOnlyList<VanLimits> Vans { get; init; } = [];

    /// <summary>Money per van where none is given.</summary>
    public decimal DefaultBudget { get; init; } = 1500m;

    /// <summary>Space per van where none is given.</summary>
    public double DefaultSpace { get; init; } = 200;

    /// <summary>What is aimed at. Default: money.</summary>
    public PlanObjective Objective { get; init; } = PlanObjective.Money;

    /// <summary>What one avoidable second visit costs, above 0.</summary>
    public decimal SecondVisitCost { get; init; } = 85m;

    /// <summary>Cost of holding stock a year, as a share of its price, 0 to 1.</summary>
    public double HoldingRate { get; init; } = 0.20;

    /// <summary>Share of its price a piece loses when nobody asked for it in a year and the supplier no longer takes it back, 0 to 1.</summary>
    public double StaleLoss { get; init; } = 0.5;

    /// <summary>Days between two restockings, 1 or more.</summary>
    public int ReviewDays { get; init; } = 7;

    /// <summary>Lead time in days where the orders tell none.</summary>
    public int LeadDays { get; init; } = 4;

    /// <summary>Size classes that stay off the vans.</summary>
    public IReadOnlyList<string> OffVanSizes { get; init; } = ["bulky"];

    /// <summary>Most pieces of one part on a van. Default 8.</summary>
    public int MostPieces { get; init; } = 8;

    /// <summary>Quarters the replay goes back. Default 8.</summary>
    public int ReplayQuarters { get; init; } = 8;

    /// <summary>Draws of the week-block bootstrap. Default 1,000.</summary>
    public int Draws { get; init; } = 1000;

    /// <summary>Seed of those draws.</summary>
    public int Seed { get; init; } = 20240229;

    /// <summary>How history becomes demand.</summary>
    internal DemandOptions Demand { get; init; } = new();

    /// <summary>Everything that is wrong with these options, a line each; empty: nothing.</summary>
    public IReadOnlyList<string> Faults()
    {
        var faults = new List<string>();
        void Need(bool holds, string fault)
        {
            if (!holds)
            {
                faults.Add(fault);
            }
        }

        foreach (VanLimits van in Vans)
        {
            Need(van.Budget >= 0, $"Van {van.Van}: a budget of {van.Budget} is below 0; give the money its stock may tie up.");
            Need(van.Space >= 0, $"Van {van.Van}: a space of {van.Space} is below 0; give its space units.");
        }

        Need(Vans.Select(v => v.Van).Distinct().Count() == Vans.Count, "A van is listed twice; list each once.");
        Need(DefaultBudget >= 0, $"A budget of {DefaultBudget} is below 0.");
        Need(DefaultSpace >= 0, $"A space of {DefaultSpace} is below 0.");
        Need(SecondVisitCost > 0, $"A second visit at {SecondVisitCost} would cost nothing; give what it costs.");
        Need(HoldingRate is >= 0 and <= 1, $"A holding cost rate of {HoldingRate} is not between 0 and 1.");
        Need(StaleLoss is >= 0 and <= 1, $"A loss on stale pieces of {StaleLoss} is not between 0 and 1.");
        Need(ReviewDays >= 1, $"Restocking every {ReviewDays} days: give 1 or more.");
        Need(LeadDays >= 0, $"A lead time of {LeadDays} days is below 0.");
        Need(Demand.HistoryDays >= 1, $"A history of {Demand.HistoryDays} days is none.");
        return faults;
    }
}
