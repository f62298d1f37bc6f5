using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Everything a shop is told about its vans as of today.</summary>
/// <param name="Plans">A plan per van; empty where groups were joined, see <see cref="JoinedPlan"/>.</param>
/// <param name="Totals">Sums over all plans.</param>
/// <param name="Summaries">Each in one line.</param>
/// <param name="Rows">Parts per van.</param>
/// <param name="Changes">Steps from what is aboard.</param>
/// <param name="Orders">What to buy.</param>
/// <param name="Next">Parts just beyond and just within the plans.</param>
/// <param name="Curve">Completion against budget.</param>
/// <param name="Shelf">Reorder points of the shop's shelf.</param>
/// <param name="Booked">Parts the booked jobs may need.</param>
public sealed record ShopPlan(
    IReadOnlyList<PlannedVan> Plans, PlanTotals Totals, IReadOnlyList<VanSummary> Summaries, IReadOnlyList<PlanRow> Rows, IReadOnlyList<VanChange> Changes,
    IReadOnlyList<OrderLine> Orders, IReadOnlyList<NextPart> Next, IReadOnlyList<CurvePoint> Curve, IReadOnlyList<ShelfLevel> Shelf,
    IReadOnlyList<BookedRow> Booked)
{
    private const int NextParts = 8;

    /// <summary>Pieces counted on the vans that no job used for a year.</summary>
    public IReadOnlyList<DeadStock> Dead { get; init; } = [];

    /// <summary>Plans all vans from what is known at the end of the data.</summary>
    public static ShopPlan Create(ShopData data, ShopViews views, VanPlanOptions options, double serviceTarget, BookedJobs booked)
    {
        ShopData free = Reservations.SetAside(data, booked.Waiting);
        int[]? FreeAboard(PlannedVan planned) => data.Counts.Any(c => c.Van == planned.Van.Van) ? Aboard(free, planned) : null;
        ShopView view = views.Before(data.AsOf.AddDays(1), booked.Needs.SelectMany(n => n.Parts).Select(p => p.PartNumber));
        IReadOnlyList<PlannedVan> all = VanPlanner.Plan(view, options, LoadEffort.Thorough, booked.Needs);
        IReadOnlyList<PlannedVan> plans = [.. all.Where(p => PlanRefusal.Reason(p) is null)];
        IReadOnlyList<VanChange> changes = ChangePlanner.Changes(free, plans);
        IReadOnlyList<BookedRow> calls = BookedRow.From(booked, plans, FreeAboard);
        return new ShopPlan(
            plans,
            PlanTotals.From(plans),
            [.. all.Select(p => VanSummary.From(p, FreeAboard(p), calls, booked.Waiting.Count(c => c.Van == p.Van.Van), options))],
            [.. plans.SelectMany(p => PlanRow.From(p, options, serviceTarget))],
            changes,
            OrderLine.From(changes, data),
            [.. plans.AsParallel().AsOrdered().SelectMany(p => NextPart.Find(p, NextParts))],
            [.. all.Index().Where(p => plans.Contains(p.Item)).AsParallel().AsOrdered().SelectMany(p => BudgetCurve.Create(p.Item, p.Index, options, FreeAboard(p.Item)))],
            ShelfPlanner.Levels(plans, options),
            calls)
        {
            Dead = DeadStock.Find(free, views.Facts, options),
        };
    }

    private static int[] Aboard(ShopData data, PlannedVan planned)
    {
        int[] aboard = new int[planned.View.Parts.Count];
        foreach (ShopCount count in data.Counts.Where(c => c.Van == planned.Van.Van))
        {
            if (planned.View.IndexOf(count.PartNumber) is var part and >= 0)
            {
                aboard[part] += count.OnHand;
            }
        }

        return aboard;
    }
}

/// <summary>Plans of groups of vans as one plan of the shop.</summary>
public static class JoinedPlan
{
    /// <summary>Puts them one after the other; order lines of one part and shelves of one part add up.</summary>
    /// <param name="groups">In the order of their vans' names. They are taken one by one and not kept.</param>
    public static ShopPlan Join(IEnumerable<ShopPlan> groups)
    {
        ShopPlan[] each = [.. groups.Select(g => g with { Plans = [] })];
        return each is [var only] ? only : new ShopPlan(
            [],
            new PlanTotals(each.Sum(g => g.Totals.Budget), each.Sum(g => g.Totals.Gained), each.Sum(g => g.Totals.Bound)),
            [.. each.SelectMany(g => g.Summaries)],
            [.. each.SelectMany(g => g.Rows)],
            [.. each.SelectMany(g => g.Changes)],
            [.. each.SelectMany(g => g.Orders).GroupBy(o => (o.Supplier, o.PartNumber)).Select(Sum)
                .OrderBy(o => o.Supplier, StringComparer.Ordinal).ThenBy(o => o.PartNumber, StringComparer.Ordinal)],
            [.. each.SelectMany(g => g.Next)],
            [.. each.SelectMany(g => g.Curve)],
            [.. each.SelectMany(g => g.Shelf).GroupBy(s => s.PartNumber, StringComparer.Ordinal).Select(Sum).OrderBy(s => s.PartNumber, StringComparer.Ordinal)],
            [.. each.SelectMany(g => g.Booked)])
        {
            Dead = [.. each.SelectMany(g => g.Dead)],
        };
    }

    private static OrderLine Sum(IEnumerable<OrderLine> lines)
    {
        OrderLine[] all = [.. lines];
        return all[0] with
        {
            Quantity = all.Sum(o => o.Quantity),
            Total = all.Sum(o => o.Total),
            ForVans = string.Join(", ", all.Select(o => o.ForVans)),
        };
    }

    // Each group feeds from a shelf of its own, so that points and shortages add up as well as use does.
    private static ShelfLevel Sum(IEnumerable<ShelfLevel> levels)
    {
        ShelfLevel[] all = [.. levels];
        double pieces = all.Sum(s => s.PiecesPerMonth);
        return all[0] with
        {
            PiecesPerMonth = pieces,
            CriticalRatio = pieces > 0 ? all.Sum(s => s.CriticalRatio * s.PiecesPerMonth) / pieces : all[0].CriticalRatio,
            ReorderPoint = all.Sum(s => s.ReorderPoint),
            ExpectedMissing = all.Sum(s => s.ExpectedMissing),
            SbaPerMonth = Sum(all, s => s.SbaPerMonth),
            TsbPerMonth = Sum(all, s => s.TsbPerMonth),
        };
    }

    // A part that no group ever used stays without a forecast.
    private static double? Sum(ShelfLevel[] all, Func<ShelfLevel, double?> forecast) =>
        all.Any(s => forecast(s) is not null) ? all.Sum(forecast) : null;
}

/// <summary>One van's plan, with the demand it is for and the problem it solves.</summary>
/// <param name="Van">Limits of the van.</param>
/// <param name="View">The shop as it was known.</param>
/// <param name="Demand">What the van is expected to be asked for.</param>
/// <param name="Booked">Jobs already booked on it.</param>
/// <param name="Usual">The problem the plan solves, what a year is expected to bring; its worth is per year.</param>
/// <param name="Plan">The load and its bound.</param>
/// <param name="WorthPerJob">Worth of one job finished at the first visit in the problem's unit.</param>
public sealed record PlannedVan(VanLimits Van, ShopView View, VanDemand Demand, BookedDemand Booked, LoadProblem Usual, VanLoad Plan,
    double WorthPerJob)
{
    /// <summary>Pieces planned, by part.</summary>
    public IReadOnlyList<int> Target => Plan.Quantities;

    /// <summary>Expected share of the jobs of a usual year finished at the first visit, 0 to 1; null when no job is expected.</summary>
    public double? Completion(IReadOnlyList<int> load) =>
        Usual.TotalWeight > 0 ? Usual.Worth([.. load]) / Usual.TotalWeight : null;
}
