using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;
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
    public void Of_CountedVansOfAShopWhoseJobsNameNoParts_IsNoFault()
    {
        ShopData data = TinyShop.Make(9);
        data = data with { Jobs = [.. data.Jobs.Select(j => j with { Lines = [] })], LastUses = [], Parts = [], Orders = [] };
        Assert.All(Plan(data, TinyShop.Options).Summaries, s => Assert.Equal(0, s.Pieces));
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
        Assert.All(plan.Summaries, s => Assert.Equal(("no plan: no settled job tells what this van needs yet", (double?)null), (s.Answer, s.Completion)));
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
    public void Of_BookedCallsThatNeedARarePart_TakeItAlongEachAndLeaveTheLoad()
    {
        ShopData data = TinyShop.Make(11);
        VanPlanOptions options = TinyShop.Options with { Vans = [new VanLimits("1", 120, 40)] };
        ShopPlan usual = Plan(data, options);
        Assert.DoesNotContain(usual.Rows, r => r.PartNumber == "P10");
        Call call = new();
        BookedJobs two = new(
            [new BookedCall("B1", data.AsOf, "1", "unknown", call), new BookedCall("B2", data.AsOf, "1", "unknown", call), new BookedCall("B3", data.AsOf, "1", "unknown", call)],
            [
                new BookedNeed("B1", "1", 0.1, [new BookedPart("pump", "P10", 1, 0.9, Bring: true)]),
                new BookedNeed("B2", "1", 0.1, [new BookedPart("pump", "P10", 2, 0.5, Bring: true)]),
                new BookedNeed("B3", "1", 0.9, [new BookedPart("pump", "P10", 1, 0.01, Bring: false)]),
            ],
            "three calls");
        ShopPlan booked = ShopPlan.Create(data, new ShopViews(data, options), options, 0.9, two);
        Assert.Equal(usual.Rows, booked.Rows);
        Assert.Equal(usual.Changes, booked.Changes);
        Assert.Equal([1, 2, 0], booked.Booked.Select(b => b.TakeAlong));
        Assert.Equal(1 + 0.6 + 0.91, booked.Summaries[0].BookedFinished, 9);
    }

    // Two pieces were counted; one of them came in for a job that waits for it, so another call can be given one.
    [Fact]
    public void Create_PieceReceivedForAWaitingJob_IsNotCountedAsAboard()
    {
        ShopData data = TinyShop.Make(12);
        ShopData counted = data with
        {
            Counts = [new ShopCount("1", "P02", "P02", 2, data.AsOf), new ShopCount("2", "P02", "P02", 2, data.AsOf)],
            Orders = [.. data.Orders, new ShopOrder("First", data.AsOf.AddDays(-6), data.AsOf.AddDays(-2), "P02", 1, 22, "W1")],
        };
        BookedJobs waits = BookedJobs.None with { Waiting = [new BookedCall("W1", data.AsOf.AddDays(-8), "1", Outcome.PartOrdered, new Call())] };
        ShopPlan plan = ShopPlan.Create(counted, new ShopViews(counted, TinyShop.Options), TinyShop.Options, 0.9, waits);
        Assert.Equal([1, 2], plan.Summaries.Select(s => s.PiecesCounted));
        Assert.Equal(1, plan.Changes.Where(c => c is { Van: "1", PartNumber: "P02" } && c.Action != ChangeAction.Add).Sum(c => c.Quantity));
        ShopData later = counted with { Orders = [.. data.Orders, new ShopOrder("First", data.AsOf.AddDays(-6), null, "P02", 1, 22, "W1")] };
        Assert.Equal([2, 2], ShopPlan.Create(later, new ShopViews(later, TinyShop.Options), TinyShop.Options, 0.9, waits).Summaries.Select(s => s.PiecesCounted));
    }

    [Theory]
    [InlineData(21)]
    [InlineData(22)]
    public void Create_OnAPastDay_FinishesWhatTheEvidenceOfThatQuarterSays(int seed)
    {
        ShopData data = TinyShop.Make(seed);
        VanPlanOptions options = TinyShop.Options;
        var views = new ShopViews(data, options);
        DateOnly from = RollingReplay.Quarters(data, options.ReplayQuarters)[^1];
        ReplayRow[] evidence = [.. RollingReplay.Run(data, views, options).Rows.Where(r => r.Policy == ReplayPolicy.Plan && r.Quarter == QuarterJudge.QuarterName(from))];

        // As it would have been handed out then: nothing of later days, and calls that were booked.
        ShopData then = data with { AsOf = from.AddDays(-1), Jobs = [.. data.Jobs.Where(j => j.OpenedOn < from)], Counts = [] };
        ShopPlan handedOut = ShopPlan.Create(then, new ShopViews(then, options), options, 0.9, Booked("1", "P10", 0.9));
        IReadOnlyDictionary<string, string> today = data.NumbersOn(data.AsOf);
        int finished = 0;
        foreach (PlannedVan planned in handedOut.Plans)
        {
            TestQuarter test = TestQuarter.Create(
                data, views.Facts, planned.Van.Van, from, from.AddMonths(3), options, planned.View.Parts.Select(p => today.GetValueOrDefault(p.Number, p.Number)));
            finished += new QuarterJudge(test, options, planned.Van.Van).Row(ReplayPolicy.Plan, test.Translate(planned.Target, planned.View, today)).Finished;
        }

        Assert.InRange(finished, evidence.Sum(r => r.Finished) - 0.01 * evidence.Sum(r => r.Jobs), evidence.Sum(r => r.Finished) + 0.01 * evidence.Sum(r => r.Jobs));
    }

    [Fact]
    public void Create_LogWhosePartLinesWereNotRead_IsRefusedWithTheReason()
    {
        ShopData data = TinyShop.Make(11);
        data = data with { Jobs = [.. data.Jobs.Select((j, i) => i % 4 == 0 ? j : j with { Outcome = Outcome.FixedWithoutPart, Lines = [] })] };
        ShopPlan plan = Plan(data, TinyShop.Options);
        Assert.All(plan.Summaries, s => Assert.StartsWith("no plan: by this log, ", s.Answer, StringComparison.Ordinal));
        Assert.All(plan.Summaries, s => Assert.Equal((0m, 0), (s.MoneyUsed, s.Pieces)));
        Assert.Empty(plan.Rows);
        Assert.Empty(plan.Changes);
        Assert.Empty(plan.Orders);
    }

    [Fact]
    public void Create_PartsInWordsOnly_IsRefusedWithTheReason()
    {
        ShopData data = TinyShop.Make(11);
        data = data with { Jobs = [.. data.Jobs.Select(j => j with { Lines = [.. j.Lines.Select(l => l with { PartNumber = null, FittedNumber = null })] })] };
        ShopPlan plan = Plan(data, TinyShop.Options);
        Assert.All(plan.Summaries, s => Assert.Matches("^no plan: [0-9]{3} finished jobs name their parts in words, or by numbers that no list has[.] Add ", s.Answer));
        Assert.Empty(plan.Changes);
    }

    [Fact]
    public void Create_NoPriceAnywhere_IsRefusedWithTheReason()
    {
        ShopData data = TinyShop.Make(11);
        data = data with { Parts = [.. data.Parts.Select(p => p with { Price = null })], Orders = [] };
        ShopPlan plan = Plan(data, TinyShop.Options);
        Assert.All(plan.Summaries, s => Assert.StartsWith("no plan: no price", s.Answer, StringComparison.Ordinal));
        Assert.Empty(plan.Changes);
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
        Assert.Equal(0.2, booked.BookedFinished, 9);
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

    [Fact]
    public void Of_CountedVan_IsComparedWithTheBestLoadForItsOwnMoney()
    {
        VanSummary first = Plan(TinyShop.Make(13), TinyShop.Options).Summaries.Single(s => s.Van == "1");
        Assert.True(first.CompletionForCounted >= first.CompletionCounted - 1e-9);
        CurvePoint today = Assert.Single(Plan(TinyShop.Make(13), TinyShop.Options).Curve, c => c.Van == "1" && c.AboardCompletion is not null);
        Assert.Equal(first.MoneyCounted, today.Budget);
        Assert.Equal(first.CompletionCounted!.Value, today.AboardCompletion!.Value, 9);
        Assert.Equal(first.CompletionForCounted!.Value, today.PlanCompletion!.Value, 9);
        Assert.True(today.BestRuleCompletion >= today.MostUsedCompletion && today.BestRuleCompletion <= today.BoundCompletion + 1e-9);
    }

    [Fact]
    public void Find_PartNobodyUsedOrBoughtForAYear_IsDeadStockWithItsAge()
    {
        ShopData data = TinyShop.Make(13);
        ShopPart Part(string number) => data.Parts[0] with { Number = number, CurrentNumber = number, Price = 20 };
        ShopCount Count(string number) => new("1", number, number, 3, data.AsOf);
        data = data with
        {
            // D4 was used by a visit that no plan counts: a preventive one, or one of another group's van.
            LastUses = [.. data.LastUses, new("D1", data.AsOf.AddDays(-500)), new("D4", data.AsOf.AddDays(-10))],
            Parts = [.. data.Parts, Part("D1"), Part("D2"), Part("D3"), Part("D4")],
            Counts = [Count("D1"), Count("D2"), Count("D3"), Count("D4"), Count("P02")],
            Orders = [.. data.Orders.Where(o => o.PartNumber != "D1"), new ShopOrder("S", data.AsOf.AddDays(-30), null, "D3", 1, 20, null)],
        };
        IReadOnlyList<DeadStock> dead = Plan(data, TinyShop.Options).Dead;
        Assert.Equal([("D1", 500), ("D2", null)], dead.Select(d => (d.PartNumber, d.DaysUnused)));
        Assert.Equal((3, 60m, data.AsOf.AddDays(-500)), (dead[0].Quantity, dead[0].Money, dead[0].LastUsedOn));
    }

    private static BookedJobs Booked(string van, string part, double chance) =>
        new([], [new BookedNeed("B1", van, 0.2, [new BookedPart("pump", part, 1, chance)])], "1 booked");

    private static ShopPlan Plan(ShopData data, VanPlanOptions options) => ShopPlan.Create(data, new ShopViews(data, options), options, 0.9, BookedJobs.None);
}
