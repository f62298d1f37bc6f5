using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class BookedDemandTests
{
    [Fact]
    public void Levels_OneJob_WeighsItsOddsOncePerRestocking()
    {
        LoadJob[] jobs = [.. Demand((0.2, 0, 0.7)).Levels(7, 85)];
        double perYear = 85 * 365.25 / 7;
        Assert.Equal([0.2 * perYear, 0.7 * perYear], jobs.Select(j => j.Weight));
        Assert.Empty(jobs[0].Levels);
        Assert.Equal([new PartNeed(0, 1)], jobs[1].Levels);
    }

    [Fact]
    public void Levels_TwoJobsForOnePart_TheSecondNeedsTwoPiecesWhereTheFirstTookOne()
    {
        // Hand-worked: the second job needs level 1 with 0.5 x (1 - 0.4), level 2 with 0.5 x 0.4.
        LoadJob[] second = [.. Demand((0, 0, 0.4), (0, 0, 0.5)).Levels(1, 1.0 / 365.25).Where(j => j.Levels.Count > 0).Skip(1)];
        Assert.Equal([0.3, 0.2], second.Select(j => Math.Round(j.Weight, 12)));
        Assert.Equal([1, 2], second.Select(j => j.Levels[0].Quantity));
    }

    [Fact]
    public void Plan_BookedNoFillCall_RaisesTheDemandOfItsPartByItsOdds()
    {
        ShopData data = TinyShop.Make(14);
        ShopView view = new ShopViews(data, TinyShop.Options).Before(data.AsOf.AddDays(1));
        int valve = view.IndexOf("P06");
        double Worth(double? chance)
        {
            BookedNeed[] booked = chance is { } c ? [new BookedNeed("B1", "1", 0, [new BookedPart("inlet_valve", "P06", 1, c)])] : [];
            PlannedVan planned = VanPlanner.Plan(view, TinyShop.Options, LoadEffort.Quick, booked)[0];
            int[] load = new int[view.Parts.Count];
            double empty = planned.Problem.Worth(load);
            load[valve] = 1;
            return (planned.Problem.Worth(load) - empty) / planned.WorthPerJob;
        }

        double perYear = 365.25 / TinyShop.Options.ReviewDays;
        Assert.Equal(Worth(null) + (0.3 * perYear), Worth(0.3), 6);
        Assert.Equal(Worth(null) + (0.9 * perYear), Worth(0.9), 6);
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

    private static BookedDemand Demand(params (double NoPart, int Part, double Chance)[] jobs) =>
        new([.. jobs.Select(j => (j.NoPart, (IReadOnlyList<(double, PartNeed)>)[(j.Chance, new PartNeed(j.Part, 1))]))]);
}
