using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Analysis.Tests.VanPlan.Replay;

public sealed class RollingReplayTests
{
    private static readonly ShopData Data = TinyShop.Make(20, 1500);
    private static readonly ReplayEvidence Replayed = RollingReplay.Run(Data, new ShopViews(Data, TinyShop.Options), TinyShop.Options);

    [Fact]
    public void Quarters_HalfAYearOfLogFirst_AreWholeAndOldestFirst() => Assert.Equal(
        [new DateOnly(2025, 10, 1), new DateOnly(2026, 1, 1), new DateOnly(2026, 4, 1)], RollingReplay.Quarters(Data, 3));

    [Fact]
    public void Quarters_ShortLog_AreNone() =>
        Assert.Empty(RollingReplay.Quarters(Data with { Jobs = [.. Data.Jobs.Where(j => j.OpenedOn >= new DateOnly(2026, 3, 1))] }, 8));

    [Fact]
    public void Run_EveryVanAndQuarter_NobodyBeatsHindsightAtEqualMoney()
    {
        foreach (var group in Replayed.Rows.GroupBy(r => (r.Quarter, r.Van)))
        {
            ReplayRow best = group.Single(r => r.Policy == ReplayPolicy.Hindsight);
            ReplayRow plan = group.Single(r => r.Policy == ReplayPolicy.Plan);
            Assert.All(group.Where(r => r.Policy != ReplayPolicy.Counted), r =>
            {
                Assert.True(r.Finished <= Math.Ceiling(best.Finished * 1.005), $"{r}");
                Assert.True(r.Money <= plan.Money);
                Assert.Equal(best.Jobs, r.Jobs);
                Assert.Equal(r.Jobs, r.Weeks.Sum(w => w.Jobs));
                Assert.Equal(r.Finished, r.Weeks.Sum(w => w.Finished));
            });
        }
    }

    [Fact]
    public void Run_Jobs_AreReplayedOrCountedAsLeftOut()
    {
        int all = Data.Jobs.Count(j => j.OpenedOn >= new DateOnly(2025, 10, 1) && j.OpenedOn < new DateOnly(2026, 7, 1));
        Assert.Equal(all, Replayed.Rows.Where(r => r.Policy == ReplayPolicy.Plan).Sum(r => r.Jobs) + Replayed.NotRepaired + Replayed.NotTold);
    }

    [Fact]
    public void Of_Totals_AddUpAndLeadIsTheDifference()
    {
        IReadOnlyList<EvidenceRow> rows = EvidenceRow.From(Replayed.Rows, TinyShop.Options);
        EvidenceRow Total(ReplayPolicy policy) => rows.Single(r => r.Quarter == "all" && r.Van == "all" && r.Policy == policy);
        EvidenceRow plan = Total(ReplayPolicy.Plan);
        Assert.Equal(Replayed.Rows.Where(r => r.Policy == ReplayPolicy.Plan).Sum(r => r.Finished), plan.Finished);
        Assert.Equal(plan.Completion!.Value - Total(ReplayPolicy.MostUsed).Completion!.Value, plan.Lead!.Value, 12);
        Assert.InRange(plan.Completion.Value, plan.CompletionLower!.Value, plan.CompletionUpper!.Value);
        Assert.Null(Total(ReplayPolicy.MostUsed).GapClosed);
        Assert.True(Total(ReplayPolicy.Counted).Jobs < plan.Jobs);
    }

    [Fact]
    public void Of_EveryJobFinished_LimitAllowsForJobsThatWouldNotBe()
    {
        IReadOnlyList<ReplayRow> rows = [.. Replayed.Rows.Select(r => r with { Finished = r.Jobs, Weeks = [.. r.Weeks.Select(w => (w.Week, w.Jobs, w.Jobs))] })];
        EvidenceRow plan = EvidenceRow.From(rows, TinyShop.Options).Single(r => r is { Quarter: "all", Van: "all", Policy: ReplayPolicy.Plan });
        Assert.Equal((1, Proportion.Wilson(plan.Jobs, plan.Jobs).Lower, 1), (plan.Completion, plan.CompletionLower, plan.CompletionUpper));
    }

    [Fact]
    public void Of_Totals_ComparesThePlanWithTheSimpleRuleThatDidBest()
    {
        IReadOnlyList<EvidenceRow> rows = EvidenceRow.From(Replayed.Rows, TinyShop.Options);
        EvidenceRow[] all = [.. rows.Where(r => r.Quarter == "all" && r.Van == "all")];
        EvidenceRow plan = all.Single(r => r.Policy == ReplayPolicy.Plan);
        EvidenceRow[] simple = [.. all.Where(r => r.Policy is ReplayPolicy.MostUsed or ReplayPolicy.MostUsedPerCost or ReplayPolicy.PoissonGreedy)];
        Assert.Equal(3, simple.Length);
        Assert.Equal(simple.Max(r => r.Finished), simple.Single(r => r.Policy == plan.BestRule).Finished);
        Assert.Equal((double)(plan.Finished - simple.Max(r => r.Finished)) / plan.Jobs, plan.LeadBest!.Value, 12);
        Assert.InRange(plan.LeadBest.Value, plan.LeadBestLower!.Value, plan.LeadBestUpper!.Value);
        Assert.All(simple, r => Assert.Null(r.BestRule));
        Assert.All(Replayed.Rows, r => Assert.True(r.PartSets.Sum(w => w.Jobs) < r.Jobs && r.PartSets.Sum(w => w.Finished) <= r.Finished));
    }

    [Fact]
    public void PoissonGreedy_OneVan_BuysWhatIsLikeliestToBeAskedForPerMoney()
    {
        ShopView view = new ShopViews(Data, TinyShop.Options).Before(Data.AsOf.AddDays(1));
        var limits = new LoadLimits(30_000, 60);
        int[] load = BaselineStock.PoissonGreedy(view, 0, TinyShop.Options, limits);
        Assert.True(load.Zip(view.Parts, (k, p) => k * p.PriceCents).Sum() <= 30_000 && load.Zip(view.Parts, (k, p) => k * p.Space).Sum() <= 60);
        Assert.Contains(load, k => k > 0);

        // Little money and no other limit: only the piece with the best chance for its price.
        int first = Array.FindIndex(BaselineStock.PoissonGreedy(view, 0, TinyShop.Options, new LoadLimits(view.Parts.Min(p => p.PriceCents), 1e9)), k => k > 0);
        Assert.Equal(view.Parts.Min(p => p.PriceCents), view.Parts[first].PriceCents);
    }

    [Fact]
    public void Share_ManyWeeks_IntervalHoldsTheBinomialOne()
    {
        var random = new Random(3);
        (double, double)[] weeks = [.. Enumerable.Range(0, 100).Select(_ => ((double)Enumerable.Range(0, 20).Count(_ => random.NextDouble() < 0.6), 20.0))];
        Estimate share = new CompletionIntervals(100, 2000, 1).Share(weeks);
        double half = 1.96 * Math.Sqrt(0.6 * 0.4 / 2000);
        Assert.Equal(2 * half, share.Upper!.Value - share.Lower!.Value, 0.2 * half);
    }

    [Fact]
    public void Share_FewWeeksOrNoJobs_HasNoInterval()
    {
        Assert.Null(new CompletionIntervals(3, 100, 1).Share([(4, 5), (3, 5), (2, 2)]).Lower);
        Assert.Equal("no jobs", new CompletionIntervals(0, 100, 1).Share([]).Missing);
    }
}
