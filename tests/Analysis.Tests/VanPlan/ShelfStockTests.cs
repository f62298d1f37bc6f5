using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class ShelfStockTests
{
    private static readonly ShopData Shop = TinyShop.Make(11) with { Counts = [], Shelf = [new ShelfPart("P00", 3), new ShelfPart("P05", 9), new ShelfPart("P11", 2)] };

    // Four pieces of P00 are wanted of one supplier and two of another; three lie on the shelf. P05 lies there whole.
    [Fact]
    public void Use_OrdersForPartsOnTheShelf_BuyOnlyTheRest()
    {
        ShopPlan plan = Used(Shop, new OrderLine("First", null, "P00", null, 4, 8m, 32m, "1"), new OrderLine("Second", null, "P00", null, 2, 8m, 16m, "2"), new OrderLine("First", null, "P05", null, 2, 43m, 86m, "1"));
        Assert.Equal([("First", "P00", 1, 8m), ("Second", "P00", 2, 16m)], plan.Orders.Select(o => (o.Supplier, o.PartNumber, o.Quantity, o.Total)));
    }

    [Fact]
    public void Use_ReorderPoints_SayWhatIsOnHand() => Assert.Equal([("P00", (int?)3), ("P01", 0)], Used(Shop).Shelf.Select(s => (s.PartNumber, s.OnHand)));

    // P11 is used by no job in a year; nobody ordered it.
    [Fact]
    public void Use_UnusedStockOnTheShelf_IsDeadStock()
    {
        ShopData idle = Shop with { LastUses = [.. Shop.LastUses.Where(u => u.PartNumber != "P11")] };
        Assert.Equal([("shelf", "P11", 2)], Used(idle).Dead.Select(d => (d.Van, d.PartNumber, d.Quantity)));
    }

    // Two of the three pieces on the shelf came in for a job that waits: one is left for the orders.
    [Fact]
    public void Use_PiecesReceivedForAWaitingJob_AreNotGivenAway()
    {
        ShopData data = Shop with { Orders = [.. Shop.Orders, new ShopOrder("First", Shop.AsOf.AddDays(-6), Shop.AsOf.AddDays(-2), "P00", 2, 22, "W1")] };
        BookedCall waits = new("W1", data.AsOf.AddDays(-8), "1", Outcome.PartOrdered, new Call());
        ShopPlan plan = Used(data, [waits], new OrderLine("First", null, "P00", null, 4, 8m, 32m, "1"));
        Assert.Equal(3, Assert.Single(plan.Orders).Quantity);
        Assert.Equal(1, plan.Shelf.Single(s => s.PartNumber == "P00").OnHand);
    }

    // Its van has one of the two; the other lies on the shelf.
    [Fact]
    public void SetAside_VanHasSomeOfThem_TakesTheRestFromTheShelf()
    {
        ShopData data = Shop with
        {
            Counts = [new ShopCount("1", "P00", "P00", 1, Shop.AsOf)],
            Orders = [.. Shop.Orders, new ShopOrder("First", Shop.AsOf.AddDays(-6), Shop.AsOf.AddDays(-2), "P00", 2, 22, "W1")],
        };
        ShopData free = Reservations.SetAside(data, [new BookedCall("W1", data.AsOf.AddDays(-8), "1", Outcome.PartOrdered, new Call())]);
        Assert.Empty(free.Counts);
        Assert.Equal(2, free.Shelf.Single(s => s.PartNumber == "P00").OnHand);
    }

    [Fact]
    public void Use_ShelfCountedEmpty_SaysNoneIsOnHand()
    {
        ShopPlan plan = Used(Shop with { Shelf = [new ShelfPart("P00", 0)] });
        Assert.Equal([0, 0], plan.Shelf.Select(s => s.OnHand));
        Assert.Empty(plan.Dead);
    }

    [Fact]
    public void Use_ShelfNotCounted_ChangesNothing()
    {
        ShopPlan plan = Used(Shop with { Shelf = [] }, new OrderLine("First", null, "P00", null, 4, 8m, 32m, "1"));
        Assert.Equal(4, Assert.Single(plan.Orders).Quantity);
        Assert.All(plan.Shelf, s => Assert.Null(s.OnHand));
    }

    private static ShopPlan Used(ShopData data, params OrderLine[] orders) => Used(data, [], orders);

    private static ShopPlan Used(ShopData data, IReadOnlyList<BookedCall> waiting, params OrderLine[] orders)
    {
        ShelfLevel Level(string part) => new(part, null, null, 10m, 3, 1, 0.9, 2, 0.1, null, null);
        var plan = new ShopPlan([], new PlanTotals(100, 1, 1), [], [], [], orders, [], [], [Level("P00"), Level("P01")], []);
        return ShelfStock.Use(plan, data, waiting, new ShopViews(data, TinyShop.Options).Facts, TinyShop.Options);
    }
}
