using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Plans every van of a shop from what was known on a day.</summary>
public static class VanPlanner
{
    private const double StaleDays = 365;

    /// <summary>One plan per van.</summary>
    /// <param name="view">The shop as known.</param>
    /// <param name="options">How.</param>
    /// <param name="effort">How hard to search.</param>
    /// <param name="booked">
    /// Jobs already booked, or null if there is none. They have no part in the load, which stands for months: it is the
    /// same that the replay of past quarters judges. What they need beyond it is taken along for them.
    /// </param>
    public static IReadOnlyList<PlannedVan> Plan(ShopView view, VanPlanOptions options, LoadEffort effort, IReadOnlyList<BookedNeed>? booked = null)
    {
        VanDemandModel model = VanDemandModel.Learn(view.Jobs, view.From, view.Sizes, options.Demand, view.Kinds);
        return [.. Enumerable.Range(0, view.Vans.Count).AsParallel().AsOrdered().Select(v =>
            PlanVan(view, view.Vans[v], model.Of(v), options, effort, BookedDemand.From(view, view.Vans[v].Van, booked ?? [])))];
    }

    /// <summary>The plan of one van for a given demand.</summary>
    public static PlannedVan PlanVan(
        ShopView view, VanLimits van, VanDemand demand, VanPlanOptions options, LoadEffort effort, BookedDemand booked)
    {
        double worth = options.Objective == PlanObjective.Money ? (double)options.SecondVisitCost : 1;
        IReadOnlyList<LoadJob> jobs = DemandLevels.Year(demand, view.Restock, worth);
        var limits = new LoadLimits((long)Math.Floor(van.Budget * 100m), van.Space);
        LoadPart[] parts = Parts(view, demand, options);
        LoadProblem usual = LoadProblemBuilder.Build(parts, jobs, limits);
        return new PlannedVan(van, view, demand, booked, usual, VanLoadPlanner.Plan(usual, effort), worth);
    }

    private static LoadPart[] Parts(ShopView view, VanDemand demand, VanPlanOptions options)
    {
        double[] perDay = demand.PiecesPerDay();
        return [.. view.Parts.Select((p, i) => new LoadPart(
            p.Number, p.PriceCents, p.Space,
            p.Ended || (p.SizeClass is { } size && options.OffVanSizes.Contains(size)) ? 0 : options.MostPieces,
            options.Objective == PlanObjective.Money ? Charges(p, perDay[i] * StaleDays, demand.Evidence[i], options) : []))];
    }

    /// <summary>Holding for a year, and what the piece loses should nobody ask for it in that year after its return window.</summary>
    private static double[] Charges(StockPart part, double piecesPerYear, double evidence, VanPlanOptions options)
    {
        double price = (double)part.Price;
        double[] charges = new double[options.MostPieces];
        var year = NegativeBinomialDistribution.FromMean(Math.Max(piecesPerYear, 1e-9), 0.5 + evidence);
        for (int k = 1; k <= charges.Length; k++)
        {
            double stale = part.ReturnableDays >= StaleDays ? 0 : options.StaleLoss * year.Cdf(k - 1);
            charges[k - 1] = price * (options.HoldingRate + stale);
        }

        return charges;
    }
}
