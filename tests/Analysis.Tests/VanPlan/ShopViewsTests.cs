using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class ShopViewsTests
{
    [Fact]
    public void Plan_LaterRowsCutOff_NoEarlierPlanChanges()
    {
        for (int seed = 0; seed < 12; seed++)
        {
            ShopData data = TinyShop.Make(seed);
            foreach (DateOnly day in new[] { new DateOnly(2025, 4, 1), new DateOnly(2025, 10, 2), new DateOnly(2026, 4, 1) })
            {
                Assert.Equal(Planned(data, day), Planned(TinyShop.CutBefore(data, day), day));
            }
        }
    }

    [Fact]
    public void Plan_EarlierRowsCutOff_ChangesThePlan()
    {
        ShopData data = TinyShop.Make(1);
        var day = new DateOnly(2026, 4, 1);
        ShopData thinner = data with { Jobs = [.. data.Jobs.Where((_, i) => i % 7 == 0)] };
        Assert.NotEqual(Planned(data, day), Planned(thinner, day));
    }

    [Fact]
    public void Before_ReplacedNumber_IsTheOldOneUntilTheArrowIsKnown()
    {
        var views = new ShopViews(TinyShop.Make(2), TinyShop.Options);
        ShopView before = views.Before(new DateOnly(2025, 9, 1));
        ShopView after = views.Before(new DateOnly(2026, 1, 1));
        Assert.True(before.IndexOf("P03") >= 0 && before.IndexOf("Q03") < 0);
        Assert.True(after.IndexOf("P03") < 0 && after.IndexOf("Q03") >= 0);
    }

    [Theory]
    [InlineData(Outcome.FixedWithPart, true, NeedsKnown.Yes)]
    [InlineData(Outcome.FixedWithPart, false, NeedsKnown.PartsNotTold)]
    [InlineData(Outcome.FixedWithoutPart, false, NeedsKnown.Yes)]
    [InlineData(Outcome.Fixed, false, NeedsKnown.PartsNotTold)]
    [InlineData(Outcome.Declined, false, NeedsKnown.NotRepaired)]
    [InlineData(Outcome.PartOrdered, false, NeedsKnown.StillOpen)]
    public void Told_Outcome_SaysWhetherTheNeedIsKnown(string outcome, bool part, NeedsKnown expected)
    {
        var day = new DateOnly(2026, 1, 5);
        var job = new ShopJob("J", "1", day, day, null, null, outcome, part ? [new ShopPartLine("A", "A", 1)] : []);
        Assert.Equal(expected, JobNeeds.Told(job, day.AddDays(1)));
        Assert.Equal(NeedsKnown.StillOpen, JobNeeds.Told(job, day));
        Assert.Equal(NeedsKnown.StillOpen, JobNeeds.Told(job with { ClosedOn = null }, day.AddDays(1)));
    }

    [Fact]
    public void On_PriceLeadTimeAndEnd_AreThoseKnownThatDay()
    {
        var early = new DateOnly(2025, 1, 10);
        ShopData data = TinyShop.Make(3) with
        {
            Orders =
            [
                new ShopOrder("S", new(2025, 1, 1), new(2025, 1, 6), "P01", 1, 12m, null),
                new ShopOrder("S", new(2025, 1, 11), new(2025, 1, 13), "P01", 1, 14m, null),
            ],
            Ended = [new EndedPart("P01", new(2025, 1, 20))],
        };
        var facts = new StockPartFacts(data);
        StockPart then = facts.On("P01", early, 9);
        Assert.Equal((12m, 5, false, "S"), (then.Price, then.LeadDays, then.Ended, then.Supplier));
        StockPart later = facts.On("P01", new(2025, 2, 1), 9);
        Assert.Equal((14m, 2, true), (later.Price, later.LeadDays, later.Ended));
        Assert.Equal((15m, 9), (facts.On("P01", new(2024, 12, 1), 9).Price, facts.On("P01", new(2024, 12, 1), 9).LeadDays));
    }

    private static string Planned(ShopData data, DateOnly day)
    {
        ShopView view = new ShopViews(data, TinyShop.Options).Before(day);
        return string.Join('|', VanPlanner.Plan(view, TinyShop.Options, LoadEffort.Quick).Select(p => string.Join(',',
            p.Target.Select((n, i) => n > 0 ? $"{view.Parts[i].Number}x{n}@{view.Parts[i].Price}" : "").Where(t => t.Length > 0))));
    }
}
