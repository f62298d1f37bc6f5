using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class VanDemandModelTests
{
    private static readonly DateOnly AsOf = new(2026, 1, 1);

    [Fact]
    public void Of_NoHistory_ExpectsNothing() =>
        Assert.Empty(VanDemandModel.Learn([], AsOf, new DemandSizes(2, 1, 1, 3), new DemandOptions()).Of(0).Sets);

    [Fact]
    public void Of_EvenHistory_RecoversTheRatePerVan()
    {
        PastJob[] jobs = [.. Enumerable.Range(1, 730).SelectMany(age => Enumerable.Range(0, 2).Select(v => Job(v, age, 0, 0)))];
        VanDemandModel model = VanDemandModel.Learn(jobs, AsOf, new DemandSizes(2, 1, 1, 1), new DemandOptions { SeasonYears = 99 });
        Assert.Equal(1.0, model.Of(0).Sets.Sum(s => s.PerDay), 6);
        Assert.Equal(1.0, model.Of(1).Sets.Sum(s => s.PerDay), 6);
    }

    [Fact]
    public void Of_VansWithTheirOwnFamilies_KeepTheirOwnMix()
    {
        // Van 0 serves family 0 nine times in ten, van 1 family 1.
        PastJob[] jobs = [.. Enumerable.Range(1, 700).SelectMany(age => Enumerable.Range(0, 2).Select(v => age % 10 == 0 ? Job(v, age, 1 - v, 1 - v) : Job(v, age, v, v)))];
        VanDemandModel model = VanDemandModel.Learn(jobs, AsOf, new DemandSizes(2, 1, 2, 2), new DemandOptions { SeasonYears = 99 });
        double[] first = model.Of(0).PiecesPerDay();
        Assert.InRange(first[0] / first.Sum(), 0.85, 0.92);
    }

    [Fact]
    public void Of_VansThatDifferByChanceOnly_ShareTheShopsMix()
    {
        var random = new Random(5);
        PastJob[] jobs = [.. Enumerable.Range(0, 600).Select(i => Job(random.Next(3), 1 + (i % 365), random.Next(8), random.Next(8)))];
        VanDemandModel model = VanDemandModel.Learn(jobs, AsOf, new DemandSizes(3, 1, 8, 8), new DemandOptions { SeasonYears = 99 });
        double[][] mixes = [.. Enumerable.Range(0, 3).Select(v => model.Of(v).PiecesPerDay()).Select(d => d.Select(x => x / d.Sum()).ToArray())];
        for (int p = 0; p < 8; p++)
        {
            Assert.InRange(mixes.Max(m => m[p]) - mixes.Min(m => m[p]), 0, 0.06);
        }
    }

    [Fact]
    public void Of_SummerParts_AreExpectedMoreBeforeSummer()
    {
        PastJob[] jobs = [.. Enumerable.Range(1, 3 * 365).Select(age => AsOf.AddDays(-age)).SelectMany(day =>
            Enumerable.Range(0, day.Month is >= 6 and <= 8 ? 3 : 1).Select(_ => new PastJob(0, day, 0, 0, [new PartNeed(0, 1)])))];
        double PerDay(DateOnly day) => VanDemandModel.Learn([.. jobs.Where(j => j.Day < day)], day, new DemandSizes(1, 1, 1, 1), new DemandOptions()).Of(0).Sets.Sum(s => s.PerDay);
        Assert.InRange(PerDay(new DateOnly(2025, 6, 1)) / PerDay(new DateOnly(2025, 12, 31)), 2.2, 3.3);
    }

    private static PastJob Job(int van, int age, int family, int part) => new(van, AsOf.AddDays(-age), 0, family, [new PartNeed(part, 1)]);
}
