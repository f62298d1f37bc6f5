using PartsSignal.Analysis.Tests.VanPlan;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;
using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class KnownDemandTests
{
    private static readonly ShopData Data = TinyShop.Make(20, 1500);
    private static readonly ReplayEvidence Replayed = RollingReplay.Run(Data, new ShopViews(Data, TinyShop.Options), TinyShop.Options);

    [Fact]
    public void Compare_TrueDemand_NoPlanAttainsMoreThanTheOneThatKnows()
    {
        IReadOnlyList<KnownDemandRow> rows = Compare("2025Q4", "2026Q1", "2026Q2");
        Assert.Equal(6, rows.Count);
        Assert.All(rows, r => Assert.True(r.PlanFinished <= r.BestFinished * 1.003 && r.PlanFinished > 0.5 * r.BestFinished, $"{r}"));
    }

    [Fact]
    public void Compare_QuartersWithoutTruth_AreLeftOut()
    {
        Assert.Equal(["2026Q1"], Compare("2026Q1").Select(r => r.Quarter).Distinct());
        Assert.Empty(Compare("2019Q1"));
    }

    private static IReadOnlyList<KnownDemandRow> Compare(params string[] quarters)
    {
        TrueSet[] truth = [.. new[] { "1", "2" }.SelectMany(v => quarters.SelectMany(q =>
            Enumerable.Range(0, 11).Select(p => new TrueSet(v, q, [(p == 3 ? "Q03" : $"P{p:00}", 1)], 20.0 / (p + 1)))))];
        return KnownDemand.Compare(Replayed.Plans, truth, Data.NumbersOn(Data.AsOf), new StockPartFacts(Data), TinyShop.Options);
    }
}
