using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class JoinedPlanTests
{
    [Fact]
    public void Of_OneGroup_IsThatGroup()
    {
        ShopPlan only = Plan(100, [new OrderLine("Haldor", null, "A1", null, 1, 2m, 2m, "1")], []);
        Assert.Equal(only.Orders, JoinedPlan.Join([only]).Orders);
        Assert.Equal(only.Totals, JoinedPlan.Join([only]).Totals);
    }

    [Fact]
    public void Of_TwoGroups_LinesOfOnePartAddUpAndOthersStay()
    {
        ShopPlan joined = JoinedPlan.Join([
            Plan(100, [new OrderLine("Haldor", null, "B1", null, 2, 3m, 6m, "1 x2"), new OrderLine("Haldor", null, "A1", null, 1, 2m, 2m, "1")], []),
            Plan(50, [new OrderLine("Haldor", null, "B1", null, 1, 3m, 3m, "7"), new OrderLine("Arvid", null, "B1", null, 1, 3m, 3m, "8")], []),
        ]);
        Assert.Equal(
            [
                new OrderLine("Arvid", null, "B1", null, 1, 3m, 3m, "8"),
                new OrderLine("Haldor", null, "A1", null, 1, 2m, 2m, "1"),
                new OrderLine("Haldor", null, "B1", null, 3, 3m, 9m, "1 x2, 7"),
            ],
            joined.Orders);
        Assert.Equal(new PlanTotals(150m, 15, 18), joined.Totals);
    }

    [Fact]
    public void Of_ShelvesOfTwoGroups_UseAddsUpAndTheRatioIsWeighedByIt()
    {
        ShelfLevel level = Assert.Single(JoinedPlan.Join([Plan(1, [], [Level(3, 0.9, 2, 0.5, null)]), Plan(1, [], [Level(1, 0.7, 1, 0.25, 4)])]).Shelf);
        Assert.Equal((4.0, 3, 0.75, 4.0), (level.PiecesPerMonth, level.ReorderPoint, level.ExpectedMissing, level.SbaPerMonth));
        Assert.Equal(0.85, level.CriticalRatio, 12);
    }

    [Fact]
    public void Of_PartThatNoGroupEverUsed_HasNoForecast() =>
        Assert.Null(Assert.Single(JoinedPlan.Join([Plan(1, [], [Level(0, 0.9, 0, 0, null)]), Plan(1, [], [Level(0, 0.9, 0, 0, null)])]).Shelf).SbaPerMonth);

    private static ShelfLevel Level(double pieces, double ratio, int point, double missing, double? forecast) =>
        new("A1", null, null, 10m, 3, pieces, ratio, point, missing, forecast, forecast);

    private static ShopPlan Plan(decimal budget, IReadOnlyList<OrderLine> orders, IReadOnlyList<ShelfLevel> shelf) =>
        new([], new PlanTotals(budget, (double)budget / 10, (double)budget * 12 / 100), [], [], [], orders, [], [], shelf, []);
}
