using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Reorder points of the shelf that feeds the vans.</summary>
internal static class ShelfPlanner
{
    private const int Months = 24;
    private const double DaysPerMonth = 30.44;

    /// <summary>One level per part that any van's plan carries.</summary>
    public static IReadOnlyList<ShelfLevel> Levels(IReadOnlyList<PlannedVan> plans, VanPlanOptions options)
    {
        if (plans.Count == 0)
        {
            return [];
        }

        ShopView view = plans[0].View;
        double[][] perDay = [.. plans.Select(p => p.Demand.PiecesPerDay())];
        double[][] monthly = Monthly(view);
        var levels = new List<ShelfLevel>();
        for (int p = 0; p < view.Parts.Count; p++)
        {
            int at = p;
            double all = perDay.Sum(d => d[at]);
            double carried = plans.Zip(perDay, (v, d) => v.Target[at] > 0 ? d[at] : 0).Sum();
            if (carried > 0)
            {
                levels.Add(Level(view, at, all, carried / plans.Count(v => v.Target[at] > 0), plans[0].Demand.Evidence[at], monthly[at], options));
            }
        }

        return levels;
    }

    private static ShelfLevel Level(ShopView view, int p, double perDay, double perVanDay, double evidence, double[] monthly, VanPlanOptions options)
    {
        StockPart part = view.Parts[p];
        double days = options.ReviewDays + part.LeadDays;

        // A piece missing on the shelf leaves a van short for a lead time longer; that costs a visit if it is asked for meanwhile.
        double under = (double)options.SecondVisitCost * (1 - Math.Exp(-perVanDay * Math.Max(part.LeadDays, 1)));
        double over = Math.Max((double)part.Price * options.HoldingRate * days / 365, 1e-6);
        var shelf = new Newsvendor(NegativeBinomialDistribution.FromMean(perDay * days, 0.5 + evidence), Math.Max(under, 1e-9), over);
        int stock = shelf.BestStock;
        IntermittentForecast? lumpy = IntermittentForecast.Fit(monthly, 0.1, 0.1);
        return new ShelfLevel(
            part.Number, part.Description, part.Supplier, part.Price, part.LeadDays, perDay * DaysPerMonth, shelf.CriticalRatio,
            stock, shelf.ExpectedMissing(stock), lumpy?.Sba, lumpy?.Tsb);
    }

    private static double[][] Monthly(ShopView view)
    {
        double[][] used = [.. view.Parts.Select(_ => new double[Months])];
        foreach (var job in view.Jobs)
        {
            int age = (int)((view.From.DayNumber - job.Day.DayNumber) / DaysPerMonth);
            foreach (PartNeed need in age < Months ? job.Needs : [])
            {
                used[need.Part][Months - 1 - age] += need.Quantity;
            }
        }

        return used;
    }
}

/// <summary>When the shop's shelf should reorder a part that the vans carry.</summary>
/// <param name="PartNumber">Current number.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Supplier">Null: not known.</param>
/// <param name="Price">Price of a piece.</param>
/// <param name="LeadDays">Days from order to delivery.</param>
/// <param name="PiecesPerMonth">Expected use of all vans, gamma-Poisson with ageing.</param>
/// <param name="CriticalRatio">Wanted chance that nothing is missing until the next delivery, 0 to 1.</param>
/// <param name="ReorderPoint">Order when the shelf holds no more than this.</param>
/// <param name="ExpectedMissing">Pieces missing on average until the next delivery at that point.</param>
/// <param name="SbaPerMonth">Syntetos-Boylan forecast, for comparison, or null if it was never used.</param>
/// <param name="TsbPerMonth">Teunter-Syntetos-Babai forecast, for comparison; near 0: a dying part, or null if it was never used.</param>
/// <param name="OnHand">Pieces counted on the shelf, or null if the shelf was not counted.</param>
public sealed record ShelfLevel(
    string PartNumber, string? Description, string? Supplier, decimal Price, int LeadDays, double PiecesPerMonth, double CriticalRatio,
    int ReorderPoint, double ExpectedMissing, double? SbaPerMonth, double? TsbPerMonth, int? OnHand = null);
