using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Prediction;

public sealed class TrainingTableTests
{
    /// <summary>Columns of the store that are filled on site or later; nothing may be learned from them.</summary>
    public static readonly TheoryData<string> LateColumns =
        ["technician", "van", "outcome", "visits", "labour_minutes", "first_visit_done", "source_file", "source_line", "model_raw", "customer_id"];

    [Fact]
    public void Read_JobsOfOneUnit_CountsOnlyVisitsClosedBeforeTheCall()
    {
        using Database database = Shop();
        ClosedCall last = TrainingTable.Read(database).Single(c => c.JobId == "J3");
        Assert.Equal([new EarlierVisit(9, "inlet_valve", "no_fill")], last.Call.Earlier);
        Assert.Equal("timer", last.Need);
        Assert.Equal(4.5, last.Call.AgeYears);
    }

    [Fact]
    public void Read_OpenOrUnknownJobs_AreLeftOut()
    {
        using Database database = Shop();
        Assert.Equal(["J1", "J2", "J3"], TrainingTable.Read(database).Select(c => c.JobId));
    }

    [Fact]
    public void ReadBooked_OpenJob_IsACallWithItsEarlierVisits()
    {
        using Database database = Shop();
        BookedCall open = Assert.Single(BookedCalls.Read(database));
        Assert.Equal(("J4", new DateOnly(2024, 3, 12), "noise"), (open.JobId, open.OpenedOn, open.Call.ComplaintKind));
        Assert.Equal([new EarlierVisit(1, "none", "leak"), new EarlierVisit(10, "inlet_valve", "no_fill")], open.Call.Earlier);
    }

    [Theory]
    [MemberData(nameof(LateColumns))]
    public void Read_WithoutALateColumn_SeesTheSameTable(string column)
    {
        using Database database = Shop();
        string before = Text(database);
        database.Execute($"alter table jobs drop column {Database.Quote(column)}");
        Assert.Equal(before, Text(database));
    }

    [Fact]
    public void Read_WithoutPartsAndOrders_SeesTheSameTable()
    {
        using Database database = Shop();
        string before = Text(database);
        foreach (string table in (string[])["job_parts", "part_orders", "job_history"])
        {
            database.Execute($"drop table {Database.Quote(table)}");
        }

        Assert.Equal(before, Text(database));
    }

    [Fact]
    public void Read_WithoutTheFuture_SeesTheSameEarlierRows()
    {
        using Database database = Shop();
        string[] before = [.. TrainingTable.Read(database).Where(c => c.OpenedOn < new DateOnly(2024, 3, 10)).Select(Text)];
        database.Execute("delete from jobs where opened_on >= date '2024-03-10'");
        Assert.Equal(before, TrainingTable.Read(database).Select(Text));
    }

    private static string Text(Database database) => string.Join('\n', TrainingTable.Read(database).Select(Text));

    private static string Text(ClosedCall call) => $"{call} {string.Join(',', call.Call.Earlier)}".Replace(call.Call.Earlier.ToString()!, "", StringComparison.Ordinal);

    private static Database Shop()
    {
        var database = Database.Open();
        foreach (string name in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, name);
        }

        Add(database, "J1", "2024-03-01", "2024-03-02", "inlet_valve", "no_fill");
        Add(database, "J2", "2024-03-08", "2024-03-11", "none", "leak");
        Add(database, "J3", "2024-03-11", "2024-03-12", "timer", "no_start");
        Add(database, "J4", "2024-03-12", null, "motor", "noise");
        Add(database, "J5", "2024-03-13", "2024-03-14", null, "noise");
        return database;
    }

    private static void Add(Database database, string job, string opened, string? closed, string? need, string kind) =>
        database.Execute(
            "insert into jobs (job_id, opened_on, closed_on, closing_basis, unit_id, appliance_type, model_basis, age_years, age_basis, complaint_kind, outcome, main_component, source_file, source_line, technician, visits) values ($id, $opened::date, $closed::date, case when $closed is null then 'open' else 'closing day' end, 'U1', 'washer', 'exact', 4.5, 'date code', $kind, 'fixed_with_part', $need, 'a.csv', 1, 'T', 2)",
            ("id", job), ("opened", opened), ("closed", closed), ("kind", kind), ("need", need));
}
