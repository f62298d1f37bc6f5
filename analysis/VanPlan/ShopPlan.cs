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

    /// <summary>Plans all vans from what is known at the end of the data.</summary>
    public static ShopPlan Create(ShopData data, ShopViews views, VanPlanOptions options, double serviceTarget, BookedJobs booked)
    {
        ShopView view = views.Before(data.AsOf.AddDays(1), booked.Needs.SelectMany(n => n.Parts).Select(p => p.PartNumber));
        IReadOnlyList<PlannedVan> plans = VanPlanner.Plan(view, options, LoadEffort.Thorough, booked.Needs);
        IReadOnlyList<VanChange> changes = ChangePlanner.Changes(data, plans);
        return new ShopPlan(
            plans,
            PlanTotals.From(plans),
            [.. plans.Select(p => VanSummary.From(p, Aboard(data, p)))],
            [.. plans.SelectMany(p => PlanRow.From(p, options, serviceTarget))],
            changes,
            OrderLine.From(changes, data),
            [.. plans.AsParallel().AsOrdered().SelectMany(p => NextPart.Find(p, NextParts))],
            [.. plans.AsParallel().AsOrdered().SelectMany((p, v) => BudgetCurve.Create(p, v, options))],
            ShelfPlanner.Levels(plans, options),
            BookedRow.From(booked, plans, p => Aboard(data, p)));
    }

    private static int[]? Aboard(ShopData data, PlannedVan planned)
    {
        ShopCount[] counts = [.. data.Counts.Where(c => c.Van == planned.Van.Van)];
        int[] aboard = new int[planned.View.Parts.Count];
        foreach (ShopCount count in counts)
        {
            int part = planned.View.IndexOf(count.PartNumber);
            aboard[part < 0 ? 0 : part] += part < 0 ? 0 : count.OnHand;
        }

        return counts.Length == 0 ? null : aboard;
    }
}
