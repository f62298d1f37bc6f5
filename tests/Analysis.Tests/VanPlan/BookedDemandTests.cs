using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class BookedDemandTests
{
    [Fact]
    public void Plan_BookedCalls_LeaveTheLoadAlone()
    {
        ShopData data = TinyShop.Make(14);
        ShopView view = new ShopViews(data, TinyShop.Options).Before(data.AsOf.AddDays(1));
        BookedNeed[] booked = [.. Enumerable.Range(0, 20).Select(i => new BookedNeed($"B{i}", "1", 0, [new BookedPart("inlet_valve", "P06", 1, 0.9, true)]))];
        Assert.Equal(
            VanPlanner.Plan(view, TinyShop.Options, LoadEffort.Quick)[0].Target,
            VanPlanner.Plan(view, TinyShop.Options, LoadEffort.Quick, booked)[0].Target);
    }

    [Fact]
    public void Finished_ByHand_AddsUpTheChancesOfWhatIsAboard()
    {
        BookedDemand demand = new([(0.2, [(0.5, new PartNeed(0, 1)), (0.2, new PartNeed(1, 2))])]);
        Assert.Equal([0.2, 0.7, 0.9], new int[][] { [0, 1], [1, 1], [1, 2] }.Select(load => Math.Round(demand.Finished(load), 9)));
    }

    [Fact]
    public void Of_PartOrVanNobodyKnows_IsLeftOut()
    {
        ShopData data = TinyShop.Make(15);
        ShopView view = new ShopViews(data, TinyShop.Options).Before(data.AsOf.AddDays(1));
        BookedNeed[] booked = [new BookedNeed("B1", "1", 0.1, [new BookedPart("pump", "NEVER", 1, 0.9)]), new BookedNeed("B2", "9", 0, [])];
        Assert.Empty(Assert.Single(BookedDemand.From(view, "1", booked).Jobs).Parts);
    }

    [Fact]
    public void Before_NumberAskedFor_IsAmongThePartsThoughNeverUsed()
    {
        ShopData data = TinyShop.Make(16) with { Jobs = [], Counts = [] };
        ShopView view = new ShopViews(data, TinyShop.Options).Before(data.AsOf.AddDays(1), ["P04"]);
        Assert.Equal("P04", Assert.Single(view.Parts).Number);
    }
}
