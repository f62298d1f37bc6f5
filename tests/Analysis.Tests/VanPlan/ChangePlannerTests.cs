using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class ChangePlannerTests
{
    private static readonly ShopData Data = TinyShop.Make(4);
    private static readonly IReadOnlyList<PlannedVan> Plans = Plan(Data);
    private static readonly IReadOnlyList<VanChange> Changes = ChangePlanner.Changes(Data, Plans);

    [Fact]
    public void Changes_EveryVanAndPart_EndsAtThePlan()
    {
        foreach (PlannedVan plan in Plans)
        {
            for (int p = 0; p < plan.Target.Count; p++)
            {
                string number = plan.View.Parts[p].Number;
                int aboard = Changes.Where(c => c.Van == plan.Van.Van && c.PartNumber == number
                    && c.Action is (ChangeAction.Keep or ChangeAction.Replace or ChangeAction.Add or ChangeAction.MoveIn)).Sum(c => c.Quantity);
                Assert.Equal(plan.Target[p], aboard);
                int counted = Data.Counts.Where(c => c.Van == plan.Van.Van && c.PartNumber == number).Sum(c => c.OnHand);
                int went = Changes.Where(c => c.Van == plan.Van.Van && c.PartNumber == number
                    && c.Action is not (ChangeAction.Add or ChangeAction.MoveIn)).Sum(c => c.Quantity);
                Assert.Equal(counted, went);
            }
        }
    }

    [Fact]
    public void Changes_ManyOfOnePartOnOneVan_MovesBeforeItBuys()
    {
        int wanted = Plans[0].Target[Plans[0].View.IndexOf("P00")];
        int own = Plans[1].Target[Plans[1].View.IndexOf("P00")];
        Assert.True(wanted > 0 && own + wanted <= 14, "the shop is made so that van 2 holds enough for both");
        Assert.Equal(wanted, Changes.Single(c => c is { Van: "1", Action: ChangeAction.MoveIn, PartNumber: "P00" }).Quantity);
        Assert.DoesNotContain(Changes, c => c.PartNumber == "P00" && c.Action == ChangeAction.Add);
    }

    [Fact]
    public void Changes_OldLabel_IsUsedUpOrTakenOffButNeverSentBack()
    {
        VanChange[] old = [.. Changes.Where(c => c.Label == "P03")];
        Assert.NotEmpty(old);
        Assert.All(old, c => Assert.NotEqual(ChangeAction.SendBack, c.Action));
    }

    [Fact]
    public void Changes_SurplusBoughtLately_GoesBackBeforeTheWindowCloses()
    {
        DateOnly received = Data.AsOf.AddDays(-10);
        ShopData lately = Data with
        {
            Counts = [new ShopCount("1", "P11", "P11", 2, Data.AsOf)],
            Orders = [.. Data.Orders, new ShopOrder("First", received.AddDays(-3), received, "P11", 1, 80m, null)],
        };
        VanChange[] surplus = [.. ChangePlanner.Changes(lately, Plan(lately)).Where(c => c.PartNumber == "P11")];
        Assert.Equal(received.AddDays(60), surplus.Single(c => c.Action == ChangeAction.SendBack).By);
        Assert.Equal(1, surplus.Single(c => c.Action == ChangeAction.TakeOff).Quantity);
    }

    [Fact]
    public void From_NoCounts_OrdersTheWholePlan()
    {
        ShopData empty = Data with { Counts = [] };
        IReadOnlyList<PlannedVan> plans = Plan(empty);
        IReadOnlyList<OrderLine> orders = OrderLine.From(ChangePlanner.Changes(empty, plans), empty);
        Assert.Equal(plans.Sum(p => p.Target.Sum()), orders.Sum(o => o.Quantity));
        Assert.Equal(plans.Sum(p => p.Plan.CostCents) / 100m, orders.Sum(o => o.Total));
    }

    private static IReadOnlyList<PlannedVan> Plan(ShopData data) =>
        VanPlanner.Plan(new ShopViews(data, TinyShop.Options).Before(data.AsOf.AddDays(1)), TinyShop.Options, LoadEffort.Quick);
}
