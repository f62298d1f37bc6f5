using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Rates;

public class RatePropertyTests
{
    private static readonly RateOptions Options = new();

    [Fact]
    public void Rates_RowsPermuted_AreTheSame()
    {
        SmallShop shop = new ShopWorld(3).Shop;
        var random = new Random(5);
        var shuffled = new SmallShop
        {
            Jobs = [.. shop.Jobs.OrderBy(_ => random.Next())],
            Units = [.. shop.Units.OrderBy(_ => random.Next())],
        };
        using Database one = shop.Build(ResultModels.Rates), two = shuffled.Build(ResultModels.Rates);
        Assert.Equal(FailureRateTable.Create(RateCounts.Read(one), Options), FailureRateTable.Create(RateCounts.Read(two), Options));
        Assert.Equal(MonthlyRate.Table(RateCounts.Read(one), Options), MonthlyRate.Table(RateCounts.Read(two), Options));
    }

    [Fact]
    public void Rates_DataDoubled_CountsDoubleAndFiguresStay()
    {
        SmallShop shop = new ShopWorld(4).Shop;
        var doubled = new SmallShop
        {
            Jobs = [.. shop.Jobs, .. shop.Jobs.Select(j => j with { JobId = j.JobId + "x", UnitId = j.UnitId is null ? null : j.UnitId + "x" })],
            Units = [.. shop.Units, .. shop.Units.Select(u => u with { UnitId = u.UnitId + "x" })],
        };
        using Database one = shop.Build(ResultModels.Rates), two = doubled.Build(ResultModels.Rates);
        FailureRate[] single = [.. FailureRateTable.Create(RateCounts.Read(one), Options)];
        FailureRate[] twice = [.. FailureRateTable.Create(RateCounts.Read(two), Options)];
        Assert.Equal(single.Length, twice.Length);
        for (int i = 0; i < single.Length; i++)
        {
            Assert.Equal((single[i].Subject, single[i].Events * 2, single[i].NotKnown * 2), (twice[i].Subject, twice[i].Events, twice[i].NotKnown));
            Assert.Equal(single[i].Exposure * 2, twice[i].Exposure, 1e-9);
            if (single[i].Estimate is { } estimate)
            {
                Assert.Equal(estimate, twice[i].Estimate!.Value, 1e-9);
                Assert.True(twice[i].Upper - twice[i].Lower <= single[i].Upper - single[i].Lower);
            }
        }
    }

    [Fact]
    public void MonthlyRates_FutureDeleted_PastMonthsStay()
    {
        SmallShop shop = new ShopWorld(6).Shop;
        DateOnly cut = new(2022, 6, 30);
        var past = new SmallShop { Jobs = [.. shop.Jobs.Where(j => j.OpenedOn <= cut)], Units = shop.Units };
        using Database all = shop.Build(ResultModels.Rates, ShopWorld.Last), some = past.Build(ResultModels.Rates, cut);
        Assert.Equal(
            MonthlyRate.Table(RateCounts.Read(all), Options).Where(r => r.Month <= cut),
            MonthlyRate.Table(RateCounts.Read(some), Options));
    }

    [Fact]
    public void Rates_OneMonthAsked_AgreeWithTheMonthlyTable()
    {
        SmallShop shop = new ShopWorld(8).Shop;
        using Database whole = shop.Build(ResultModels.Rates), month = shop.Open();
        ResultRunner.Build(
            month, ResultModels.Rates, TimeProvider.System,
            ("as_of", null), ("rate_from", new DateOnly(2021, 5, 1)), ("rate_to", new DateOnly(2021, 5, 31)));
        var fromMonth = FailureRateTable.Create(RateCounts.Read(month), Options)
            .Where(r => r is { Grouping: "type", Events: > 0 }).Select(r => (r.Basis, r.ApplianceType, r.Subject, r.Events, r.Exposure));
        var fromTable = MonthlyRate.Table(RateCounts.Read(whole), Options)
            .Where(r => r.Month == new DateOnly(2021, 5, 1) && r.ModelFamily is null).Select(r => (r.Basis, r.ApplianceType, r.Subject, r.Events, r.Exposure));
        Assert.Equal(fromTable.Order(), fromMonth.Order());
    }

    [Fact]
    public void FamilyComparison_AllFamilies_ExpectWhatWasObserved()
    {
        using Database database = new ShopWorld(9).Shop.Build(ResultModels.Rates);
        foreach (var cell in FamilyComparison.Table(RateCounts.Read(database), Options, new EffectGate())
            .GroupBy(r => (r.Basis, r.ApplianceType, r.Subject)).Where(g => g.Key.ApplianceType != "range"))
        {
            Assert.Equal(cell.Sum(r => r.Observed), cell.Sum(r => r.Expected), 1e-6);
        }
    }
}
