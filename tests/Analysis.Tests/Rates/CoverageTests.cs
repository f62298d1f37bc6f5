using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Rates;

public class CoverageTests(ITestOutputHelper output)
{
    private const int Worlds = 200;

    [SlowFact]
    public void Intervals_TwoHundredShopsOfKnownTruth_HoldTheTruthInNinetyFivePercent()
    {
        var tally = new CoverageTally();
        for (int seed = 1; seed <= Worlds; seed++)
        {
            var world = new ShopWorld(WorldSeed.Of(seed));
            using Database database = world.Shop.Build(ResultModels.Rates, ShopWorld.Last);
            RateCounts counts = RateCounts.Read(database);
            foreach (FailureRate rate in FailureRateTable.Create(counts, new RateOptions()).Where(r => r.SubjectKind == RateSubject.Component && r.Estimate is not null))
            {
                Judge(tally, world, counts, rate);
            }
        }

        output.WriteLine(tally.Report);
        tally.Between(0.93, 0.97);
    }

    /// <summary>
    /// What a rate of the units seen speaks of: calls that come back to this shop, counted over all the time since the
    /// first call, whether the customer is still there or not. It holds that; the failures of the appliances it does not.
    /// </summary>
    [SlowFact]
    public void UnitsSeen_TwoHundredShopsOfKnownTruth_HoldReturnsToThisShopAndNotFailures()
    {
        var tally = new CoverageTally();
        var failures = new CoverageTally();
        for (int seed = 1; seed <= Worlds; seed++)
        {
            var world = new SeenWorld(WorldSeed.Of(seed));
            using Database database = world.Shop.Build(ResultModels.Rates, SeenWorld.Last);
            foreach (FailureRate rate in FailureRateTable.Create(RateCounts.Read(database), new RateOptions())
                .Where(r => r is { Basis: RateBasis.SeenUnitYears, SubjectKind: RateSubject.Component, Grouping: "type" or "family", Estimate: not null }))
            {
                double truth = RateTruth.OfUnitsSeen(world.Expected, rate);
                tally.Add($"rate of units seen by {rate.Grouping}", truth, rate.Lower, rate.Upper);
                if (rate.ModelFamily is { } family)
                {
                    tally.Add("shrunk rate of units seen by family", truth, rate.ShrunkLower, rate.ShrunkUpper);
                    failures.Add("failures", 100 * world.Failures[(family, rate.Subject)], rate.Lower, rate.Upper);
                }
            }
        }

        output.WriteLine($"{tally.Report}; all failures, whoever was called: {failures.Report}");
        tally.Between(0.93, 0.97);
        Assert.InRange(failures.Share("failures"), 0, 0.8);
    }

    private static void Judge(CoverageTally tally, ShopWorld world, RateCounts counts, FailureRate rate)
    {
        if (rate is { Basis: RateBasis.RegisterUnitYears, Grouping: "type" or "age" or "family" })
        {
            double truth = RateTruth.OfRegister(counts, rate, world.Rate);
            tally.Add($"rate by {rate.Grouping}", truth, rate.Lower, rate.Upper);
            if (rate.Grouping == "family")
            {
                tally.Add("shrunk rate by family", truth, rate.ShrunkLower, rate.ShrunkUpper);
            }
        }
        else if (rate is { Basis: RateBasis.ShareOfCalls, Grouping: "family", ApplianceType: "dryer" })
        {
            double truth = world.Share[(rate.ModelFamily!, rate.Subject)];
            tally.Add("share by family", truth, rate.Lower, rate.Upper);
            tally.Add("shrunk share by family", truth, rate.ShrunkLower, rate.ShrunkUpper);
        }
    }
}
