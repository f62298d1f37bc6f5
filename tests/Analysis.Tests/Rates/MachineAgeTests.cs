using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Rates;

/// <summary>A machine has one age, whatever figure it counts for.</summary>
public class MachineAgeTests
{
    private static readonly DateOnly Built = new(2020, 1, 1);

    // Built three months before it was installed: two years old since it was built, not since it was installed.
    [Fact]
    public void BuiltBeforeInstalled_RatesCurvesAndShares_CountFromTheSameDay()
    {
        using Database database = Shop(new UnitRow("u") { Registered = true, MadeFrom = Built, MadeTo = Built, InstalledOn = Built.AddDays(90) }, new(2022, 2, 1));
        Assert.Equal((Built, "built"), Assert.Single(database.Query("select born_on, born_basis from int_unit_births", Birth)));
        Assert.Equal(Built, Assert.Single(database.Query("select born_on from unit_windows", r => r.GetFieldValue<DateOnly>(0))));
        Assert.Equal(["2-4", "2-4"], Bands(database));
        Assert.Equal(762, Assert.Single(database.Query("select age_days from unit_failures", r => r.Int(0))));
        Assert.Equal(FirstDay.DayNumber - 1 - Built.DayNumber, Assert.Single(database.Query("select entry_days from unit_ages", r => r.Int(0))));
    }

    [Fact]
    public void InstalledAfterTheLogBegan_IsWatchedFromInstallationAtItsAgeSinceItWasBuilt()
    {
        using Database database = Shop(new UnitRow("u") { Registered = true, MadeFrom = Built, MadeTo = Built, InstalledOn = new(2021, 12, 1) }, new(2022, 2, 1));
        Assert.Equal(new DateOnly(2021, 12, 1).DayNumber - Built.DayNumber, Assert.Single(database.Query("select entry_days from unit_ages", r => r.Int(0))));
    }

    [Fact]
    public void BuildNotKnownToAYear_CountsFromInstallationOrNotAtAll()
    {
        var unit = new UnitRow("u") { Registered = true, MadeFrom = new(2005, 1, 1), MadeTo = new(2015, 12, 31), InstalledOn = new(2016, 3, 1) };
        using Database installed = Shop(unit, new(2022, 2, 1));
        Assert.Equal((new DateOnly(2016, 3, 1).AddDays(-183), "installed"), Assert.Single(installed.Query("select born_on, born_basis from int_unit_births", Birth)));
        Assert.Equal(["6-8", "6-8"], Bands(installed));
        using Database neither = Shop(unit with { InstalledOn = null }, new(2022, 2, 1));
        // the call still has the age that its own row tells
        Assert.Equal(["unknown", "8-10"], Bands(neither));
        Assert.Equal("built within more than a year, too wide to tell an age", Assert.Single(neither.Query("select left_out from unit_ages", r => r.GetString(0))));
    }

    // Two calls for one repair are two calls and one failure.
    [Fact]
    public void CallThatComesBack_CountsOnceInARateAndTwiceInAShare()
    {
        var shop = new SmallShop
        {
            Jobs = [new JobRow("first", FirstDay), Call("J1", new(2022, 2, 1), "drain_pump"), Call("J2", new(2022, 2, 11), "inlet_valve")],
            Units = [new UnitRow("u") { Registered = true, MadeFrom = Built, MadeTo = Built }],
        };
        using Database database = shop.Build(ResultModels.Rates, new DateOnly(2023, 12, 31));
        Assert.Equal([("share_of_calls", 2), ("register_unit_years", 1)], database.Query(
            "select basis, count(*) from rate_events where component is not null group by basis order by basis desc", r => (r.GetString(0), r.Int(1))));
        Assert.Equal("inlet_valve", Assert.Single(database.Query("select component from rate_events where basis = 'register_unit_years'", r => r.GetString(0))));
    }

    private static DateOnly FirstDay { get; } = new(2021, 1, 1);

    private static Database Shop(UnitRow unit, DateOnly call) => new SmallShop
    {
        Jobs = [new JobRow("first", FirstDay) { ApplianceType = "range" }, Call("J1", call, "drain_pump") with { AgeYears = 9 }],
        Units = [unit],
    }.Build([.. ResultModels.Rates, .. ResultModels.Curves], new DateOnly(2023, 12, 31));

    private static JobRow Call(string id, DateOnly day, string component) => new(id, day) { ClosedOn = day, UnitId = "u", MainComponent = component };

    private static (DateOnly, string) Birth(System.Data.Common.DbDataReader row) => (row.GetFieldValue<DateOnly>(0), row.GetString(1));

    private static IReadOnlyList<string> Bands(Database database) =>
        database.Query("select age_band from rate_events where job_id = 'J1' order by basis", r => r.GetString(0));
}
