using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Sql;

public sealed class ResultRunnerTests
{
    private static readonly SqlModel Observation = SqlModels.Find("observation")!;

    [Fact]
    public void Build_QueryWithVariable_MakesTableAndLogsIt()
    {
        using Database database = OneJob();
        ResultLog log = ResultRunner.Build(database, [Observation], TimeProvider.System, ("as_of", new DateOnly(2024, 3, 1)))[^1];
        Assert.Equal(("observation", 1L), (log.Table, log.Rows));
        Assert.Equal(
            (new DateOnly(2024, 2, 1), new DateOnly(2024, 3, 1)),
            database.Query("from observation", r => (r.Day(0)!.Value, r.Day(1)!.Value))[0]);
    }

    [Fact]
    public void Build_VariableNull_FallsBackToTheData()
    {
        using Database database = OneJob();
        ResultRunner.Build(database, [Observation], TimeProvider.System, ("as_of", null));
        Assert.Equal(new DateOnly(2024, 2, 1), database.Query("from observation", r => r.Day(1))[0]);
    }

    [Fact]
    public void Build_OffendingRow_FailsAndNamesIt()
    {
        using Database database = OneJob();
        var fault = Assert.Throws<InvalidDataException>(() =>
            ResultRunner.Build(database, [Observation], TimeProvider.System, ("as_of", new DateOnly(2023, 1, 1))));
        Assert.Contains("first_day=02/01/2024", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_EveryResultQuery_HasChecks() =>
        Assert.DoesNotContain(SqlModels.All, m => m.Path.StartsWith("results/", StringComparison.Ordinal) && !SqlText.Exists(m.Checks));

    private static Database OneJob()
    {
        var database = Database.Open();
        StoreTables.CreateEmpty(database, "jobs");
        database.Execute(
            "insert into jobs (job_id, opened_on, closing_basis, model_basis, age_basis, complaint_kind, outcome, source_file, source_line) " +
            "values ('J1', date '2024-02-01', 'open', 'unknown', 'unknown', 'no_fill', 'unknown', 'jobs.csv', 2)");
        return database;
    }
}
