using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;
using static PartsSignal.Analysis.Tests.AgeCurves.CurveStore;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class CurveCountsTests
{
    [Fact]
    public void UnitAges_RegisteredAndSeen_StartWhereTheirDaysCount()
    {
        using Database database = Open(
            [
                Registered("new", new DateOnly(2022, 1, 1)),
                Registered("old", new DateOnly(2015, 1, 1), removed: new DateOnly(2021, 1, 1)),
                Registered("gone", new DateOnly(2010, 1, 1), removed: new DateOnly(2019, 1, 1)),
                new UnitRow("seen") { MadeFrom = new DateOnly(2018, 1, 1), MadeTo = new DateOnly(2018, 1, 31) },
                new UnitRow("unknown"),
            ],
            [Call("A", "seen", new DateOnly(2021, 1, 16), "drain_pump"), Call("B", "unknown", new DateOnly(2021, 1, 16), "drain_pump")]);
        var ages = database.Query("from unit_ages", r => (r.GetString(0), Entry: r.Long(6), Exit: r.Long(7), LeftOut: r.Text(11)))
            .ToDictionary(r => r.Item1, r => (r.Entry, r.Exit, r.LeftOut));
        Assert.Equal((0, LastDay.DayNumber - new DateOnly(2022, 1, 1).DayNumber, null), ages["new"]);
        Assert.Equal((FirstDay.DayNumber - 1 - new DateOnly(2015, 1, 1).DayNumber, new DateOnly(2021, 1, 1).DayNumber - new DateOnly(2015, 1, 1).DayNumber, null), ages["old"]);
        Assert.StartsWith("never watched", ages["gone"].LeftOut, StringComparison.Ordinal);
        Assert.Equal(new DateOnly(2021, 1, 16).DayNumber - new DateOnly(2018, 1, 16).DayNumber, ages["seen"].Entry);
        Assert.Equal("age not known", ages["unknown"].LeftOut);
        Assert.Equal("gone", Assert.Single(database.Query("from age_rejects", r => r.GetString(0))));
    }

    [Fact]
    public void AgeLedger_FirstFailures_LeaveTheLedgerAtTheirAge()
    {
        DateOnly installed = new(2020, 6, 1);
        using Database database = Open(
            [Registered("a", installed), Registered("b", installed), Registered("c", installed)],
            [
                Call("1", "a", installed.AddDays(100), "drain_pump"),
                Call("2", "a", installed.AddDays(500), "drain_pump"),
                Call("3", "b", installed.AddDays(100), "drain_pump"),
                Call("4", "b", installed.AddDays(300), "inlet_valve"),
            ]);
        int end = LastDay.DayNumber - installed.DayNumber;
        var rows = database.Query("from age_ledger", r => (r.GetString(0), r.GetString(2), r.Int(3), r.Long(4), r.Long(5), r.Long(6)));
        Assert.Equal(
            [("drain_pump", "all", 0, 3, 0, 0), ("drain_pump", "all", 100, 0, 2, 2), ("drain_pump", "all", end, 0, 1, 0)],
            rows.Where(r => r is { Item1: "drain_pump", Item2: "all" }));
        Assert.Equal(
            [("inlet_valve", "NW100", 0, 3, 0, 0), ("inlet_valve", "NW100", 300, 0, 1, 1), ("inlet_valve", "NW100", end, 0, 2, 0)],
            rows.Where(r => r is { Item1: "inlet_valve", Item2: "NW100" }));
    }

    [Fact]
    public void UnitsSeen_FirstCall_IsNoEventAndOpensTheWatch()
    {
        var unit = new UnitRow("u") { MadeFrom = new DateOnly(2018, 1, 1), MadeTo = new DateOnly(2018, 1, 1) };
        using Database database = Open(
            [unit],
            [Call("1", "u", new DateOnly(2021, 1, 1), "drain_pump"), Call("2", "u", new DateOnly(2023, 1, 1), "drain_pump")]);
        Assert.Equal(1, database.Query("select sum(events)::bigint from age_events", r => r.Long(0))[0]);
        Assert.Equal(
            (LastDay.DayNumber - new DateOnly(2021, 1, 1).DayNumber) / 365.25,
            database.Query("select sum(unit_years) from age_exposure", r => r.Double(0))[0]!.Value, tolerance: 1e-9);
        Assert.Equal((1096, 729, 2556), Assert.Single(database.Query("from truncated_ages", r => (r.Int(4), r.Int(5), r.Int(6)))));
    }

    [Fact]
    public void UnitFailures_CallWithinTheWindow_IsTheSameCase()
    {
        DateOnly installed = new(2021, 1, 1);
        using Database database = Open(
            [Registered("a", installed)],
            [Call("1", "a", installed.AddDays(100), "drain_pump"), Call("2", "a", installed.AddDays(120), "drain_pump"), Call("3", "a", installed.AddDays(400), "drain_pump")]);
        Assert.Equal([100, 400], database.Query("from unit_failures", r => r.Int(5)));
        Assert.Equal([100, 400], database.Query("from unit_repairs", r => r.GetFieldValue<List<int>>(5))[0]);
    }

    [Fact]
    public void ReplacementSpans_EveryEnding_IsTold()
    {
        DateOnly day = new(2021, 1, 1);
        using Database database = Open(
            [Registered("a", day), new UnitRow("b"), new UnitRow("c")],
            [
                Call("1", "a", day, "drain_pump"),
                Call("2", "a", day.AddDays(40), "drain_pump"),
                Call("3", "b", day, "drain_pump"),
                Call("4", "b", day.AddDays(60), "timer") with { Outcome = "not_worth_repairing" },
                Call("5", "c", day, "drain_pump"),
            ],
            [new JobPartRow("1", 1, "P1", "drain_pump") { Supplier = "S1" }, new JobPartRow("3", 1, "P1", "drain_pump"), new JobPartRow("5", 1, "P1", "drain_pump")]);
        Assert.Equal(
            [("1", 40, "failed_again"), ("5", LastDay.DayNumber - day.DayNumber, "still_working"), ("3", 60, "written_off")],
            database.Query("from replacement_spans order by ending", r => (r.GetString(3), r.Int(4), r.GetString(5))));
    }

    [Fact]
    public void ReplacementSpans_NumberGaveWayToAnotherDesign_IsWatchedToThatDay()
    {
        DateOnly day = new(2021, 1, 1);
        using Database built = Open(
            [new UnitRow("a")],
            [Call("1", "a", day, "drain_pump"), Call("2", "a", day.AddDays(400), "drain_pump")],
            [new JobPartRow("1", 1, "P2", "drain_pump") { FittedNumber = "P1" }],
            supersession: ("P1", "P2", day.AddDays(100)));
        Assert.Equal((100, "design_changed"), Assert.Single(built.Query("from replacement_spans", r => (r.Int(4), r.GetString(5)))));
    }

    [Fact]
    public void Build_EmptyStore_GivesEmptyTables()
    {
        using var database = Database.Open();
        StoreTables.Attach(database, Path.Combine(Path.GetTempPath(), "partssignal-no-such-store"));
        Build(database);
        Assert.All(ResultModels.Curves, s => Assert.Equal(0, database.Count(s.Table)));
    }
}
