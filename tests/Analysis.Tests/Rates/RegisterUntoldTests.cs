using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Intervals;
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
    /// Three in ten jobs do not tell their machine. Whether all of them are on the register or half, the limits as published
    /// hold the calls about listed machines that reach this shop, in thin groups too, and the figures are right on average.
    /// </summary>
    [Fact]
    public void Rates_RoughWorlds_LimitsAsPublishedHoldTheCallsThatReachTheShop() => AssertHeld(evenSpread: true, halfUnlisted: true, worlds: 6);

    /// <inheritdoc cref="Rates_RoughWorlds_LimitsAsPublishedHoldTheCallsThatReachTheShop"/>
    [LongTheory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void Rates_MoreRoughWorlds_LimitsAsPublishedHoldTheCallsThatReachTheShop(bool evenSpread, bool halfUnlisted) => AssertHeld(evenSpread, halfUnlisted, worlds: 15);

    private void AssertHeld(bool evenSpread, bool halfUnlisted, int worlds)
    {
        var tally = new CoverageTally();
        var sums = new SortedDictionary<string, (double Estimate, double Truth)>(StringComparer.Ordinal);
        for (int seed = 1; seed <= worlds; seed++)
        {
            var world = new RoughWorld(WorldSeed.Of(seed), evenSpread);
            if (halfUnlisted)
            {
                world.AddUnlisted();
            }

            using Database database = world.Shop.Build(ResultModels.Rates, RoughWorld.Last);
            RateCounts counts = RateCounts.Read(database);
            foreach (FailureRate rate in FailureRateTable.Create(counts, new RateOptions())
                .Where(r => r is { SubjectKind: RateSubject.Component, Basis: RateBasis.RegisterUnitYears, Grouping: "type" or "family" or "age", Estimate: not null }))
            {
                double truth = RateTruth.OfRegister(counts, rate, world.Rate);
                tally.Add(rate.Grouping, truth, rate.Lower, rate.Upper);
                (double estimate, double all) = sums.GetValueOrDefault(rate.Grouping);
                sums[rate.Grouping] = (estimate + rate.Estimate!.Value, all + truth);
                if (rate.ModelFamily is not null)
                {
                    tally.Add("shrunk family", truth, rate.ShrunkLower, rate.ShrunkUpper);
                }
            }
        }

        output.WriteLine($"{tally.Report}; {string.Join("; ", sums.Select(s => $"{s.Key} {s.Value.Estimate / s.Value.Truth:P1}"))}");
        Assert.True(tally.Share("family") >= 0.95 && tally.Share("shrunk family") >= 0.95 && tally.Share("age") >= 0.95, tally.Report);
        Assert.True(tally.Share("type") >= 0.88, "few worlds, three rates each: " + tally.Report);
        Assert.All(sums.Values, s => Assert.InRange(s.Estimate / s.Truth, 0.96, 1.04));
    }

    /// <summary>Ten told failures, four in one family that do not tell the machine, two that tell no family either: worked by hand.</summary>
    [Fact]
    public void Rates_UntoldFailures_AreSpreadOverTheFamilies()
    {
        UnitRow[] units = [.. Enumerable.Range(0, 40).Select(i => new UnitRow($"u{i}")
        {
            ModelFamily = i % 2 == 0 ? "A" : "B",
            InstalledOn = Start,
            MadeFrom = Start,
            MadeTo = Start,
            Registered = true,
        })];
        List<JobRow> jobs =
        [
            .. Enumerable.Range(0, 10).Select(i => Job($"t{i}", $"u{i}", 40 + (100 * i), "contract") with { ModelFamily = i % 2 == 0 ? "A" : "B" }),
            .. Enumerable.Range(0, 4).Select(i => Job($"f{i}", null, 50 + (90 * i), "contract") with { ModelFamily = "A" }),
            .. Enumerable.Range(0, 2).Select(i => Job($"n{i}", null, 60 + (80 * i), "contract") with { ModelFamily = null }),
            Job("gone", null, 70, "contract") with { ModelFamily = "not listed" },
            Job("last", null, 1800, "household"),
        ];
        using Database database = new SmallShop { Units = [.. units], Jobs = jobs }.Build(ResultModels.Rates, Start.AddDays(1800));
        FailureRate[] rates = [.. FailureRateTable.Create(RateCounts.Read(database), new RateOptions())
            .Where(r => r is { SubjectKind: RateSubject.Component, Subject: "drain_pump", Basis: RateBasis.RegisterUnitYears, Grouping: "type" or "family" })
            .OrderBy(r => r.ModelFamily, StringComparer.Ordinal)];
        Assert.Equal([(null, 10L, 6L), ("A", 5L, 6L), ("B", 5L, 2L)], rates.Select(r => (r.ModelFamily, r.Events, r.Untold!.Value)));

        // 5 + 4 of 14 failures that tell their family are of A, so 9/14 of the two that tell none; 5/14 are of B.
        Assert.Equal([6, 4 + (2 * 9 / 14.0), 2 * 5 / 14.0], rates.Select(r => r.UntoldExpected!.Value), (x, y) => Math.Abs(x - y) < 1e-9);
        Assert.All(rates, r => Assert.Equal(100 * (r.Events + r.UntoldExpected!.Value) / r.Exposure, r.Estimate!.Value, 9));
        Assert.Equal(EventRate.Garwood(5, rates[1].Exposure / 100).Lower!.Value, rates[1].Lower!.Value, 9);
        Assert.Equal(16 / 14.0 * EventRate.Garwood(9, rates[1].Exposure / 100).Upper!.Value, rates[1].Upper!.Value, 9);
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
