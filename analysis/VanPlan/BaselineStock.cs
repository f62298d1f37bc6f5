using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>What a shop does without a plan: parts in one order, each in the number a restocking period uses, until the money is spent.</summary>
internal static class BaselineStock
{
    /// <summary>Most used first: pieces the van used in the history window, then pieces the shop used.</summary>
    public static int[] MostUsed(ShopView view, int van, VanPlanOptions options, LoadLimits limits) =>
        Fill(view, van, options, limits, (used, _) => used);

    /// <summary>Most used per money first.</summary>
    public static int[] MostUsedPerCost(ShopView view, int van, VanPlanOptions options, LoadLimits limits) =>
        Fill(view, van, options, limits, (used, price) => used / Math.Max(price, 1));

    private static int[] Fill(ShopView view, int van, VanPlanOptions options, LoadLimits limits, Func<double, double, double> merit)
    {
        (double[] own, double[] shop, double days) = Used(view, van, options);
        int[] load = new int[view.Parts.Count];
        long money = 0;
        double space = 0;
        foreach (int p in Enumerable.Range(0, load.Length)
            .Where(p => own[p] + shop[p] > 0 && Allowed(view.Parts[p], options))
            .OrderByDescending(p => merit(own[p], view.Parts[p].PriceCents))
            .ThenByDescending(p => merit(shop[p], view.Parts[p].PriceCents))
            .ThenBy(p => p))
        {
            double perPeriod = own[p] / Math.Max(days, 1) * (options.ReviewDays + view.Parts[p].LeadDays);
            int pieces = Math.Clamp((int)Math.Ceiling(perPeriod), 1, options.MostPieces);
            while (pieces > 0 && !limits.Allows(money + (pieces * view.Parts[p].PriceCents), space + (pieces * view.Parts[p].Space)))
            {
                pieces--;
            }

            load[p] = pieces;
            money += pieces * view.Parts[p].PriceCents;
            space += pieces * view.Parts[p].Space;
        }

        return load;
    }

    private static bool Allowed(StockPart part, VanPlanOptions options) =>
        !part.Ended && !(part.SizeClass is { } size && options.OffVanSizes.Contains(size));

    private static (double[] Own, double[] Shop, double Days) Used(ShopView view, int van, VanPlanOptions options)
    {
        double[] own = new double[view.Parts.Count];
        double[] shop = new double[view.Parts.Count];
        DateOnly from = view.From.AddDays(-options.Demand.HistoryDays);
        DateOnly first = view.From;
        foreach (var job in view.Jobs.Where(j => j.Day >= from))
        {
            first = job.Day < first ? job.Day : first;
            foreach (PartNeed need in job.Needs)
            {
                shop[need.Part] += need.Quantity;
                own[need.Part] += job.Van == van ? need.Quantity : 0;
            }
        }

        return (own, shop, view.From.DayNumber - first.DayNumber);
    }
}
