using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.Rates;

public class FailureRateTableTests
{
    private static readonly RateOptions Small = new() { FewestCalls = 1, FewestUnitYears = 0.5 };

    [Fact]
    public void Of_RegisterUnits_CountsTheirYearsByAgeWhetherTheyFailedOrNot()
    {
        // Two units from 2020-01-01, watched for the log 2022-01-01 to 2023-12-31 (730 days): ages 2 to 4 throughout.
        SmallShop shop = Register();
        using Database database = shop.Build(ResultModels.Rates, new DateOnly(2023, 12, 31));
        FailureRate rate = Single(database, RateBasis.RegisterUnitYears, "age", "inlet_valve", r => r.AgeBand == "2-4");
        Assert.Equal(1, rate.Events);
        Assert.Equal(2 * 730 / 365.25, rate.Exposure, 1e-12);
        Assert.Equal(100 / rate.Exposure, rate.Estimate!.Value, 1e-9);
        Assert.Equal("per 100 unit-years", rate.Unit);
    }

    [Fact]
    public void Of_UnitSeenFromFirstCall_FirstCallIsNoEvent()
    {
        var shop = new SmallShop
        {
            Jobs =
            [
                Job("J1", new(2022, 1, 1), "drain_pump") with { UnitId = "u" },
                Job("J2", new(2022, 7, 1), "inlet_valve") with { UnitId = "u" },
                Job("J3", new(2022, 12, 31), "timer"),
            ],
            Units = [new UnitRow("u") { SeenFirst = new(2022, 1, 1), SeenLast = new(2022, 7, 1) }],
        };
        using Database database = shop.Build(ResultModels.Rates);
        FailureRate rate = Single(database, RateBasis.SeenUnitYears, "type", "inlet_valve");
        Assert.Equal((1, 364 / 365.25), (rate.Events, rate.Exposure));
        IReadOnlyList<FailureRate> all = FailureRateTable.Create(RateCounts.Read(database), Small);
        Assert.DoesNotContain(all, r => r.Basis == RateBasis.SeenUnitYears && r.Subject == "drain_pump");
    }

    [Fact]
    public void Of_OpenJob_CountsForTheComplaintButForNoComponent()
    {
        var shop = new SmallShop
        {
            Jobs =
            [
                Job("J1", new(2022, 1, 1), "inlet_valve"),
                Job("J2", new(2022, 1, 2), "none"),
                Job("J3", new(2022, 1, 3), null) with { Outcome = "unknown" },
            ],
        };
        using Database database = shop.Build(ResultModels.Rates);
        FailureRate valve = Single(database, RateBasis.ShareOfCalls, "type", "inlet_valve");
        Assert.Equal((1, 2.0, 1), (valve.Events, valve.Exposure, valve.NotKnown));
        Assert.Equal(0.5, valve.Estimate);
        FailureRate complaint = Single(database, RateBasis.ShareOfCalls, "type", "no_fill");
        Assert.Equal((3, 3.0), (complaint.Events, complaint.Exposure));
    }

    [Fact]
    public void Of_UnderTheMinimum_SaysTooFewAndGivesNoFigure()
    {
        var shop = new SmallShop { Jobs = [Job("J1", new(2022, 1, 1), "inlet_valve"), Job("J2", new(2022, 1, 2), "none")] };
        using Database database = shop.Build(ResultModels.Rates);
        FailureRate valve = FailureRateTable.Create(RateCounts.Read(database), new RateOptions()).First(r => r.Subject == "inlet_valve");
        Assert.Null(valve.Estimate);
        Assert.Equal("too few: 2 of 10 calls", valve.Missing);
    }

    [Fact]
    public void Of_RegisterUnitRemoved_StopsCountingOnThatDay()
    {
        SmallShop shop = Register();
        shop.Units[0] = shop.Units[0] with { RemovedOn = new(2022, 2, 1) };
        using Database database = shop.Build(ResultModels.Rates, new DateOnly(2023, 12, 31));
        Assert.Equal(31 + 730, database.Query("from unit_days", r => r.GetInt64(6)).Sum());
    }

    [Fact]
    public void Of_UnitCrossingABirthday_SplitsItsDays()
    {
        SmallShop shop = Register();
        shop.Units.RemoveAt(1);
        shop.Units[0] = shop.Units[0] with { MadeFrom = new(2021, 1, 1), MadeTo = new(2021, 1, 1), InstalledOn = new(2021, 1, 1) };
        using Database database = shop.Build(ResultModels.Rates, new DateOnly(2023, 12, 31));
        IReadOnlyList<GroupSize> groups = RateCounts.Read(database).Groups;
        long Days(string band) => groups.Single(g => g.Group is { Basis: RateBasis.RegisterUnitYears, Grouping: "age" } && g.Group.AgeBand == band).UnitDays;
        Assert.Equal((365, 365), (Days("0-2"), Days("2-4")));
    }

    [Fact]
    public void AgeBands_OfTheQuery_AreTheBandsOfTheProgram()
    {
        using Database database = new SmallShop().Build(ResultModels.Rates);
        Assert.Equal(AgeBand.Standard.Select(b => b.ToString()), database.Query("from age_bands", r => r.GetString(0)));
    }

    [Fact]
    public void Of_CallsByCustomerKind_AddUpToAllCallsOfTheType()
    {
        var shop = new SmallShop
        {
            Jobs =
            [
                Job("J1", new(2022, 1, 1), "timer") with { CustomerKind = "contract" },
                Job("J2", new(2022, 1, 2), "timer") with { CustomerKind = "household" },
                Job("J3", new(2022, 1, 3), "inlet_valve") with { CustomerKind = "household" },
                Job("J4", new(2022, 1, 4), "timer"),
            ],
        };
        using Database database = shop.Build(ResultModels.Rates);
        FailureRate Timer(string? kind) => Single(database, RateBasis.ShareOfCalls, "customer_kind", "timer", r => r.GroupValue == kind);
        Assert.Equal((1, 1.0), (Timer("contract").Events, Timer("contract").Exposure));
        Assert.Equal((1, 2.0), (Timer("household").Events, Timer("household").Exposure));
        Assert.Equal((1, 1.0), (Timer("unknown").Events, Timer("unknown").Exposure));
    }

    // What help and --by name are the cuts that the counts hold.
    [Fact]
    public void Properties_OfACall_AreTheCutsOfTheCounts()
    {
        var shop = new SmallShop { Jobs = [Job("J1", new(2022, 1, 1), "timer")] };
        using Database database = shop.Build(ResultModels.Rates);
        Assert.Equal(
            RateCut.Properties.Order(StringComparer.Ordinal),
            RateCounts.Read(database).Groups.Where(g => g.Group.GroupValue is not null).Select(g => g.Group.Grouping).Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Build_EmptyStore_GivesEmptyTables()
    {
        using Database database = new SmallShop().Build(ResultModels.Rates);
        Assert.Empty(FailureRateTable.Create(RateCounts.Read(database), Small));
        Assert.Empty(UnitPopulation.Table(database));
    }

    private static SmallShop Register() => new()
    {
        Jobs =
        [
            Job("J1", new(2022, 1, 1), "timer"),
            Job("J2", new(2022, 6, 1), "inlet_valve") with { UnitId = "a" },
        ],
        Units =
        [
            new UnitRow("a") { Registered = true, MadeFrom = new(2020, 1, 1), MadeTo = new(2020, 1, 1), InstalledOn = new(2020, 1, 1) },
            new UnitRow("b") { Registered = true, MadeFrom = new(2020, 1, 1), MadeTo = new(2020, 1, 1), InstalledOn = new(2020, 1, 1) },
        ],
    };

    private static JobRow Job(string id, DateOnly opened, string? component) => new(id, opened) { ClosedOn = component is null ? null : opened, MainComponent = component };

    private static FailureRate Single(Database database, string basis, string grouping, string subject, Func<FailureRate, bool>? also = null) =>
        FailureRateTable.Create(RateCounts.Read(database), Small)
            .Single(r => r.Basis == basis && r.Grouping == grouping && r.Subject == subject && (also?.Invoke(r) ?? true));
}
