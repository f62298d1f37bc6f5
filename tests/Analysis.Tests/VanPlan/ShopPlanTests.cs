using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class ShopPlanTests
{
    [Fact]
    public void Of_TinyShop_KeepsLimitsAndSaysHowNearTheBestItIs()
    {
        ShopPlan plan = Plan(TinyShop.Make(5), TinyShop.Options);
        Assert.All(plan.Summaries, s =>
        {
            Assert.True(s.MoneyUsed <= s.Budget && s.SpaceUsed <= s.Space);
            Assert.InRange(s.BoundGap, 0, 0.01);
            Assert.True(s.Completion > s.CompletionEmpty);
            Assert.Equal("planned", s.Answer);
        });
        Assert.All(plan.Rows, r => Assert.InRange(r.Minimum, 1, r.Target));
        Assert.DoesNotContain(plan.Rows, r => r.PartNumber == "P11");
        Assert.Equal(plan.Rows.Select(r => r.PartNumber).Distinct().Order(), plan.Shelf.Select(s => s.PartNumber));
    }

    [Fact]
    public void Of_SameInput_GivesTheSamePlan()
    {
        string First() => string.Join('\n', Plan(TinyShop.Make(6), TinyShop.Options).Rows);
        Assert.Equal(First(), First());
    }

    [Fact]
    public void Of_MoreMoney_NeverExpectsLess()
    {
        IReadOnlyList<CurvePoint> curve = [.. Plan(TinyShop.Make(7), TinyShop.Options).Curve.Where(c => c.Van == "1")];
        for (int i = 1; i < curve.Count; i++)
        {
            Assert.True(curve[i].PlanCompletion >= curve[i - 1].PlanCompletion - 0.002);
        }

        Assert.All(curve, c => Assert.True(c.PlanCompletion >= c.MostUsedCompletion - 0.003 && c.PlanCompletion <= c.BoundCompletion + 1e-9));
    }

    [Fact]
    public void Of_NoMoney_SaysThatNothingFits()
    {
        VanPlanOptions broke = TinyShop.Options with { Vans = [new VanLimits("1", 0, 40)] };
        VanSummary summary = Assert.Single(Plan(TinyShop.Make(8), broke).Summaries);
        Assert.Equal((0, "no part fits this money and space"), (summary.Pieces, summary.Answer));
    }

    [Fact]
    public void Of_NoJobs_SaysThatNothingTells()
    {
        ShopPlan plan = Plan(TinyShop.Make(9) with { Jobs = [], Orders = [], Counts = [] }, TinyShop.Options);
        Assert.All(plan.Summaries, s => Assert.Equal(("no settled job tells what this van needs yet", (double?)null), (s.Answer, s.Completion)));
    }

    [Fact]
    public void Of_OneJobInAllNoOrdersNoCounts_PlansForIt()
    {
        ShopData one = TinyShop.Make(10) with
        {
            Jobs = [new ShopJob("J1", "1", TinyShop.AsOf.AddDays(-9), TinyShop.AsOf.AddDays(-8), "washer", "F1", Outcome.FixedWithPart, [new("P02", "P02", 1)])],
            Orders = [],
            Counts = [],
        };
        ShopPlan plan = Plan(one, TinyShop.Options);
        Assert.Equal("P02", Assert.Single(plan.Rows, r => r.Van == "1").PartNumber);
        Assert.Contains("first guess", plan.Summaries[0].Answer);
    }

    [Fact]
    public void Of_BookedJobThatNeedsARarePart_PutsItAboard()
    {
        ShopData data = TinyShop.Make(11);
        VanPlanOptions options = TinyShop.Options with { Vans = [new VanLimits("1", 120, 40)] };
        Assert.DoesNotContain(Plan(data, options).Rows, r => r.PartNumber == "P10");
        ShopPlan booked = ShopPlan.Create(data, new ShopViews(data, options), options, 0.9, Booked("1", "P10", 0.9));
        Assert.Contains(booked.Rows, r => r.PartNumber == "P10");
    }

    [Fact]
    public void BudgetFor_Target_IsReachedAndNotMuchTooMuch()
    {
        ShopData data = TinyShop.Make(12);
        ShopView view = new ShopViews(data, TinyShop.Options).Before(data.AsOf.AddDays(1));
        PlannedVan planned = VanPlanner.Plan(view, TinyShop.Options, LoadEffort.Quick)[0];
        decimal budget = BudgetCurve.BudgetFor(planned, 0.7, TinyShop.Options)!.Value;
        double At(decimal money)
        {
            PlannedVan plan = VanPlanner.PlanVan(view, planned.Van with { Budget = money }, planned.Demand,
                TinyShop.Options with { Objective = PlanObjective.Completions }, LoadEffort.Quick, BookedDemand.None);
            return plan.Completion(plan.Target)!.Value;
        }

        Assert.True(At(budget) >= 0.7 && At(budget * 0.8m) < 0.7);
        Assert.Null(BudgetCurve.BudgetFor(planned, 0.9999, TinyShop.Options));
    }

    [Fact]
    public void Faults_EverythingWrong_NamesEachOnce()
    {
        var wrong = new VanPlanOptions
        {
            Vans = [new VanLimits("1", -1, 5), new VanLimits("1", 1, double.NaN)],
            SecondVisitCost = 0,
            HoldingRate = 2,
            ReviewDays = 0,
        };
        Assert.Equal(6, wrong.Faults().Count);
        Assert.Empty(TinyShop.Options.Faults());
    }

    [Fact]
    public void Of_BookedJob_LeavesTheFiguresOfAUsualYearAlone()
    {
        ShopData data = TinyShop.Make(11);
        VanSummary usual = Plan(data, TinyShop.Options).Summaries[0];
        VanSummary booked = ShopPlan.Create(data, new ShopViews(data, TinyShop.Options), TinyShop.Options, 0.9, Booked("1", "P10", 0.5)).Summaries[0];
        Assert.Equal(usual.JobsPerYear, booked.JobsPerYear, 9);
        Assert.Equal((1, 0), (booked.BookedJobs, usual.BookedJobs));
        Assert.Equal(0.7, booked.BookedFinished, 9);
    }

    [Fact]
    public void Of_CountedVan_SaysWhatTheCountTiesUp()
    {
        ShopPlan plan = Plan(TinyShop.Make(13), TinyShop.Options);
        VanSummary first = plan.Summaries.Single(s => s.Van == "1");
        // One bulky P11 at 8 + 11 x 7 and two Q03 at 29.
        Assert.Equal((85m + 58m, 3), (first.MoneyCounted, first.PiecesCounted));
        Assert.Null(Assert.Single(Plan(TinyShop.Make(13) with { Counts = [] }, TinyShop.Options).Summaries, s => s.Van == "1").MoneyCounted);
    }

    private static BookedJobs Booked(string van, string part, double chance) =>
        new([], [new BookedNeed("B1", van, 0.2, [new BookedPart("pump", part, 1, chance)])], "1 booked");

    private static ShopPlan Plan(ShopData data, VanPlanOptions options) => ShopPlan.Create(data, new ShopViews(data, options), options, 0.9, BookedJobs.None);
}
