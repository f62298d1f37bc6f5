using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Rates;

/// <summary>Jobs without a serial: what is counted on the register lies between none and all of them.</summary>
public sealed class RegisterUntoldTests(ITestOutputHelper output)
{
    private static readonly DateOnly Start = new(2020, 1, 1);

    [Fact]
    public void Untold_JobsThatDoNotTellTheirUnit_AreTheRangeAroundTheTruth()
    {
        const int True = 300;
        var random = new Random(5);
        UnitRow[] units = [.. Enumerable.Range(0, 200).Select(i => new UnitRow($"u{i}") { InstalledOn = Start, MadeFrom = Start, MadeTo = Start, Registered = true })];
        List<JobRow> jobs = [.. Enumerable.Range(0, True).Select(i => Job($"J{i}", random.NextDouble() < 0.3 ? null : $"u{i % 200}", 40 + i * 5, "contract"))];
        jobs.Add(Job("house", null, 50, "household"));
        jobs.Add(Job("other", "elsewhere", 60, "contract"));
        jobs.Add(Job("last", null, 1800, "household"));
        using Database database = new SmallShop { Units = [.. units], Jobs = jobs }.Build([.. ResultModels.Curves], Start.AddDays(1800));
        (long listed, long untold) = database.Query("from register_untold select listed, untold", r => (r.GetInt64(0), r.GetInt64(1)))[0];
        Assert.True(listed < True);
        Assert.Equal(True, listed + untold);
    }

    /// <summary>
    /// Where three in ten jobs do not tell their machine, the limits as published miss the calls that reach this shop; with
    /// the most that may be added, as the report states it, they hold them.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Untold_RoughWorlds_LimitsWithAllThatMayBeAddedHoldTheCallsThatReachTheShop(bool evenSpread)
    {
        var tally = new CoverageTally();
        for (int seed = 1; seed <= 20; seed++)
        {
            var world = new RoughWorld(WorldSeed.Of(seed), evenSpread);
            using Database database = world.Shop.Build([.. ResultModels.Rates, .. ResultModels.Curves], RoughWorld.Last);
            var most = database.Query("from register_untold select component, (listed + untold) / listed::double", r => (r.GetString(0), r.GetDouble(1))).ToDictionary();
            RateCounts counts = RateCounts.Read(database);
            foreach (FailureRate rate in FailureRateTable.Create(counts, new RateOptions()).Where(r =>
                r is { SubjectKind: RateSubject.Component, Basis: RateBasis.RegisterUnitYears, Grouping: "type", Estimate: not null }))
            {
                double reaching = RateTruth.OfRegister(counts, rate, world.Rate) * RoughWorld.Reaching / RoughWorld.Told;
                tally.Add("as published", reaching, rate.Lower, rate.Upper);
                tally.Add("with all that may be added", reaching, rate.Lower, rate.Upper * most[rate.Subject]);
            }
        }

        output.WriteLine(tally.Report);
        Assert.InRange(tally.Share("as published"), 0, 0.5);
        Assert.InRange(tally.Share("with all that may be added"), 0.95, 1);
    }

    private static JobRow Job(string id, string? unit, int day, string kind) => new(id, Start.AddDays(day))
    {
        ClosedOn = Start.AddDays(day),
        UnitId = unit,
        MainComponent = "drain_pump",
        ComplaintKind = "no_drain",
        CustomerKind = kind,
    };
}
