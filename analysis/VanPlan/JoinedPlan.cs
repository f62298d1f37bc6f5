namespace PartsSignal.Analysis.VanPlan;

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
            [.. each.SelectMany(g => g.Booked)]);
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
