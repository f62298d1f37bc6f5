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

    /// <summary>
    /// Greedy on Poisson demand: each part is used at a rate of its own, half from this van and half from the shop's mean,
    /// and the next piece bought is the one whose chance to be asked for before the next delivery is highest for its price.
    /// Knows nothing of jobs that need several parts, of seasons, returns or what a part is worth.
    /// </summary>
    public static int[] PoissonGreedy(ShopView view, int van, VanPlanOptions options, LoadLimits limits)
    {
        (double[] own, double[] shop, double days) = Used(view, van, options);
        int[] load = new int[view.Parts.Count];
        double[] chance = new double[load.Length], mean = new double[load.Length], term = new double[load.Length];
        var next = new PriorityQueue<int, (double, int)>();
        void Offer(int p)
        {
            // Chance that more pieces are asked for than the load has: 1 - P(X <= load).
            chance[p] -= term[p];
            term[p] *= mean[p] / (load[p] + 1);
            if (load[p] < options.MostPieces && chance[p] > 0)
            {
                next.Enqueue(p, (-chance[p] / Math.Max(view.Parts[p].PriceCents, 1), p));
            }
        }

        for (int p = 0; p < load.Length; p++)
        {
            double pieces = (own[p] + shop[p] / Math.Max(view.Vans.Count, 1)) / 2;
            mean[p] = pieces / Math.Max(days, 1) * (options.ReviewDays + view.Parts[p].LeadDays);
            (chance[p], term[p]) = (1, Math.Exp(-mean[p]));
            if (pieces > 0 && Allowed(view.Parts[p], options))
            {
                Offer(p);
            }
        }

        long money = 0;
        double space = 0;
        while (next.TryDequeue(out int p, out _))
        {
            StockPart part = view.Parts[p];
            if (limits.Allows(money + part.PriceCents, space + part.Space))
            {
                load[p]++;
                money += part.PriceCents;
                space += part.Space;
                Offer(p);
            }
        }

        return load;
    }

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
