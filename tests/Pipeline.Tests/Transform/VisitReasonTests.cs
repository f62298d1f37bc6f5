using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Preventive visits, installations and inspections are visits, not failures, wherever failures are counted.</summary>
public sealed class VisitReasonTests(VisitsShop shop) : IClassFixture<VisitsShop>
{
    [Fact]
    public void Load_ReasonColumn_IsReadInOurWords()
    {
        Assert.Equal(
            ["J1|installation", "J2|-", "J3|preventive", "J4|failure", "J5|-", "J6|preventive"],
            shop.Rows("from jobs select job_id, visit_reason order by 1"));
    }

    [Fact]
    public async Task Load_PreventiveVisitThatNamesWhatWasAtFault_IsAFailure()
    {
        using var own = new SmallShop();
        own.Write("jobs.csv", "Job,Day,Reason,Fault\n1,2026-08-03,preventive,drain pump\n2,2026-08-04,preventive,\n3,2026-08-05,installation,\n");
        own.Write("shop.json", """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Day", "visit_reason": "Reason", "fault_component": "Fault" } } ] }""");
        LoadReport report = await own.Load();
        Assert.Contains("2 jobs in jobs.csv are preventive work, installations or inspections. They do not count as failures.", report.Assumptions);
        Assert.Equal(["1|failure", "2|preventive", "3|installation"], own.Rows("from jobs select job_id, visit_reason order by 1"));
    }

    [Fact]
    public async Task Load_PlannedVisitsInManyFiles_ThreeAreNamed()
    {
        using var own = new SmallShop();
        for (int file = 1; file <= 5; file++)
        {
            own.Write($"jobs-{file}.csv", $"Job,Day,Reason\n{file},2026-08-0{file},preventive\n");
        }

        own.Write("shop.json", """{ "sources": [ { "files": "jobs-*.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Day", "visit_reason": "Reason" } } ] }""");
        LoadReport report = await own.Load();
        Assert.Contains("5 jobs in jobs-1.csv, jobs-2.csv, jobs-3.csv and 2 more are preventive work, installations or inspections. They do not count as failures.", report.Assumptions);
    }

    [Fact]
    public void Results_VisitsThatAreNoFailures_CountForNoRateTrendOrCallback()
    {
        using Database database = shop.Open();
        ResultRunner.Build(
            database, [.. ResultModels.Rates, .. ResultModels.Trends, .. ResultModels.Callbacks], TimeProvider.System, ("as_of", null), ("rate_from", null), ("rate_to", null), ("callback_days", 30), ("early_days", 90));
        Assert.Equal(["J2", "J4", "J5"], Jobs("select job_id from rate_events where basis = 'share_of_calls' order by 1"));
        Assert.Equal(["J2", "J4", "J5"], Jobs("select job_id from trend_calls order by 1"));
        // After J4 comes J5; the preventive visit after J5 answers nothing.
        Assert.Equal(["J2>J4", "J4>J5", "J5>-"], Jobs("select job_id || '>' || coalesce(next_job, '-') from fix_followups order by 1"));
        // The pump of J5 was changed again as a precaution: no early failure.
        Assert.Equal(["J3 drive_belt -", "J4 drain_pump 15", "J5 drain_pump -", "J6 drain_pump -"], Jobs("select job_id || ' ' || component || ' ' || coalesce(again_days::varchar, '-') from int_part_followups order by 1"));

        IReadOnlyList<string> Jobs(string sql) => database.Query(sql, r => r.GetString(0));
    }

    [Fact]
    public void Results_VisitsThatAreNoFailures_AreInNoCaseAndNoCountOfWhatFailed()
    {
        using Database database = shop.Open();
        ResultRunner.Build(
            database, [.. ResultModels.Callbacks, .. ResultModels.Curves, .. ResultModels.BadBatches, .. ResultModels.Months], TimeProvider.System, ("as_of", null), ("callback_days", 30), ("early_days", 90));
        Assert.Equal(3, database.Query("select sum(calls)::bigint from cases", r => r.GetInt64(0)).Single());
        Assert.Equal(
            ["2 none 1 of 1", "3 drain_pump 1 of 1", "4 drain_pump 1 of 1"],
            database.Query("select concat(month(month), ' ', need, ' ', calls, ' of ', cause_known) from month_need_counts order by 1", r => r.GetString(0)));
        // The month itself still counts every visit.
        Assert.Equal([1, 1, 2, 2], database.Query("select calls from month_counts order by month", r => r.GetInt64(0)));
        Assert.Equal([0, 1, 1, 1], database.Query("select cause_known from month_counts order by month", r => r.GetInt64(0)));
    }

    [Fact]
    public void Queries_VisitsThatAreNoFailures_TeachNothingAndAskForNoPart()
    {
        using Database database = shop.Open();
        Assert.Equal(["J2", "J4", "J5"], TrainingTable.Read(database).Select(c => c.JobId));
        database.Execute("create table plan_vans (van varchar)");
        Assert.Equal(["J2", "J4", "J5"], database.Read("queries/van_plan/shop_jobs.sql", r => r.GetString(0)));
        Assert.Equal(["preventive 2", "installation 1"], database.Read("queries/report/other_visits.sql", r => $"{r.GetString(0)} {r.GetInt64(1)}"));
    }
}

/// <summary>A shop that says what its visits were for, loaded once.</summary>
public sealed class VisitsShop : SharedShop
{
    private const string Header = "Job,Date in,Date out,Reason,Serial,Appliance,Problem,Result,Part,What";

    // One machine: installed, inspected, a belt changed as a precaution, and then two failures of which one is not named so.
    private const string Jobs = """
        J1,2026-01-05,2026-01-05,Installation,SX100200,washer,new machine,no part needed,,
        J2,2026-02-05,2026-02-05,Besuch,SX100200,washer,look at it,no part needed,,
        J3,2026-03-05,2026-03-05,Preventive,SX100200,washer,yearly visit,part fitted,B1,drive belt
        J4,2026-03-20,2026-03-21,Breakdown,SX100200,washer,leaks,part fitted,P1,drain pump
        J5,2026-04-05,2026-04-06,,SX100200,washer,does not drain,part fitted,P1,drain pump
        J6,2026-04-20,2026-04-20,Maintenance,SX100200,washer,yearly visit,part fitted,P1,drain pump
        """;

    internal override void Write(SmallShop shop)
    {
        shop.Write("jobs.csv", Header + "\n" + Jobs + "\n");
        shop.Write("shop.json", """
            { "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Date in", "closed_on": "Date out", "visit_reason": "Reason", "serial": "Serial",
              "appliance_type": "Appliance", "complaint": "Problem", "outcome": "Result", "part": "Part", "description": "What" } } ] }
            """);
    }
}
