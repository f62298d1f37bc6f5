using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>What lies on the shop's shelf: vans are filled from it before anything is ordered.</summary>
public static class ShelfStock
{
    /// <summary>Stands where a list names a van.</summary>
    public const string Name = "shelf";

    /// <summary>The plan of the whole shop with its shelf: shorter orders, pieces on hand beside reorder points, and what lies there unused.</summary>
    /// <param name="plan">The plan of all vans, made as if the shelf were empty.</param>
    /// <param name="counted">The shop; where its shelf was not counted, the plan stays as it is.</param>
    /// <param name="waiting">Jobs that wait for an ordered part; pieces that came in for them are theirs.</param>
    /// <param name="facts">Prices.</param>
    /// <param name="options">The shop's costs.</param>
    public static ShopPlan Use(ShopPlan plan, ShopData counted, IReadOnlyList<BookedCall> waiting, StockPartFacts facts, VanPlanOptions options)
    {
        if (counted.Shelf.Count == 0)
        {
            return plan;
        }

        ShopData data = Reservations.SetAside(counted, waiting);
        var left = data.Shelf.ToDictionary(s => s.PartNumber, s => s.OnHand, StringComparer.Ordinal);
        ShopData shelf = data with { Counts = [.. data.Shelf.Where(s => s.OnHand > 0).Select(s => new ShopCount(Name, s.PartNumber, s.PartNumber, s.OnHand, null))] };
        return plan with
        {
            Shelf = [.. plan.Shelf.Select(s => s with { OnHand = left.GetValueOrDefault(s.PartNumber) })],
            Orders = [.. plan.Orders.Select(o => Less(o, left)).Where(o => o.Quantity > 0)],
            Dead = [.. plan.Dead, .. DeadStock.Find(shelf, facts, options)],
        };
    }

    // A part that several suppliers are asked for is taken from the shelf once.
    private static OrderLine Less(OrderLine order, Dictionary<string, int> left)
    {
        int taken = Math.Min(order.Quantity, left.GetValueOrDefault(order.PartNumber));
        if (taken == 0)
        {
            return order;
        }

        left[order.PartNumber] -= taken;
        int bought = order.Quantity - taken;
        return order with { Quantity = bought, Total = order.UnitPrice * bought };
    }
}
