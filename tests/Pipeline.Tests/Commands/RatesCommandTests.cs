using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Tests.Commands;

public sealed class RatesCommandTests : IDisposable
{
    private readonly string _out = Path.Combine(Path.GetTempPath(), "partssignal-tests", Path.GetRandomFileName());

    [Fact]
    public async Task Rates_SmallStore_PrintsShareWithIntervalAndBasis()
    {
        WriteStore();
        (int code, string text, string error) = await RunAsync("rates", "--out", _out, "--input", _out);
        Assert.Equal("", error);
        Assert.Equal(ExitCode.Done, code);
        Assert.Equal(
            """
            share of calls in %
            The true rate very likely lies between from and to.
            appliance  what         n  of  rate  from    to
            ---------  -----------  -  --  ----  ----  ----
            washer     none         9  12  75.0  46.8  91.1
            washer     inlet_valve  3  12  25.0   8.9  53.2


            """.ReplaceLineEndings(),
            text);
    }

    [Fact]
    public async Task Rates_AsCsv_HasEveryColumn()
    {
        WriteStore();
        (_, string text, _) = await RunAsync("rates", "--out", _out, "--input", _out, "--component", "inlet_valve", "--format", "csv");
        string[] lines = text.Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries);
        Assert.StartsWith("basis,grouping,appliance_type,brand,model_family,age_band,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("share_of_calls,type,washer,,,,,,,component,inlet_valve,3,12,calls,0,share,0.25,", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rates_OfOneMonth_CountsThatMonthAlone()
    {
        WriteStore();
        (_, string text, _) = await RunAsync("rates", "--out", _out, "--input", _out, "--month", "2024-02", "--format", "csv");
        Assert.Contains(",inlet_valve,1,1,calls,", text, StringComparison.Ordinal);
        Assert.Contains("too few: 1 of 10 calls", text, StringComparison.Ordinal);
    }

    // Two of three valves failed on listed machines; of the third nobody noted the machine.
    [Fact]
    public async Task Rates_OnTheRegister_SaysHowManyFailuresAreCountedByTheirChance()
    {
        WriteStore(withRegister: true);
        (_, string text, _) = await RunAsync("rates", "--out", _out, "--input", _out, "--component", "inlet_valve");
        Assert.Contains(
            """
            1 more failure may be on one of these machines; its job does not say which
              machine it was. The rates count 1.0 of them, the number to be expected; from
              and to run from none of them to all of them.
            """.ReplaceLineEndings(),
            text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rates_NoStore_IsBadInput()
    {
        (int code, _, string error) = await RunAsync("rates", "--out", _out, "--input", _out);
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains("there is no store here yet", error, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        if (Directory.Exists(_out))
        {
            Directory.Delete(_out, recursive: true);
        }
    }

    private void WriteStore(bool withRegister = false)
    {
        string jobs = Directory.CreateDirectory(Path.Combine(_out, "store", "jobs")).FullName;
        using var database = Database.Open();
        StoreTables.CreateEmpty(database, "jobs");
        for (int i = 0; i < 12; i++)
        {
            database.Execute(
                "insert into jobs (job_id, opened_on, closed_on, unit_id, closing_basis, appliance_type, model_basis, age_basis, complaint_kind, outcome, main_component, source_file, source_line) " +
                "values ($id, $day, $closed, $unit, 'open', 'washer', 'unknown', 'unknown', 'no_fill', 'fixed_with_part', $need, 'jobs.csv', 2)",
                ("id", $"J{i}"),
                ("day", i == 0 ? new DateOnly(2024, 2, 3) : new DateOnly(2024, 1, i + 1)),
                ("closed", withRegister ? new DateOnly(2024, 2, 3) : null),
                ("unit", withRegister && i < 2 ? $"u{i}" : null),
                ("need", i < 3 ? "inlet_valve" : "none"));
        }

        database.Execute($"copy jobs to {Database.Literal(Path.Combine(jobs, "jobs.parquet"))} (format parquet)");
        if (withRegister)
        {
            StoreTables.CreateEmpty(database, "units");
            database.Execute("insert into units (unit_id, appliance_type, made_from, made_to, registered) select 'u' || i, 'washer', date '2020-01-01', date '2020-01-01', true from range(200) as t(i)");
            database.Execute($"copy units to {Database.Literal(Path.Combine(Directory.CreateDirectory(Path.Combine(_out, "store", "units")).FullName, "units.parquet"))} (format parquet)");
        }
    }

    private static async Task<(int Code, string Out, string Error)> RunAsync(params string[] args)
    {
        var output = new StringWriter();
        var error = new StringWriter();
        int code = await CommandHost.RunAsync(args, output, error, TimeProvider.System);
        return (code, output.ToString(), error.ToString());
    }
}
