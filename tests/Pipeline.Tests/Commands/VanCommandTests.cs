using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Tests.Commands;

public sealed class VanCommandTests : IDisposable
{
    private readonly string _out = Path.Combine(Path.GetTempPath(), "partssignal-tests", Path.GetRandomFileName());

    [Fact]
    public async Task Van_SmallStore_PrintsThePlanWithinItsMoney()
    {
        WriteStore();
        (int code, string text, string error) = await RunAsync("van", "--out", _out, "--input", _out, "--budget", "30", "--slots", "10", "--list", "plan", "--format", "csv");
        Assert.Equal(("", ExitCode.Done), (error, code));
        string[] lines = text.Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("van,part_number,description,minimum,target,money,pieces_per_year,jobs_per_year", lines[0]);
        Assert.StartsWith("1,A1,Valve,1,1,20.00,", lines[1], StringComparison.Ordinal);
        Assert.Equal(2, lines.Length);
    }

    [Fact]
    public async Task Van_AsTable_SaysHowNearTheBestItIsInAtMost80Columns()
    {
        WriteStore();
        (_, string text, _) = await RunAsync("van", "--out", _out, "--input", _out);
        Assert.Contains("of the best possible plan", text, StringComparison.Ordinal);
        Assert.Contains("not counted", text, StringComparison.Ordinal);
        Assert.All(text.Split(Environment.NewLine), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public async Task Van_SeveralFaults_NamesThemAll()
    {
        (int code, _, string error) = await RunAsync("van", "--out", _out, "--input", _out, "--budget", "-1", "--target", "3");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains("--budget -1", error, StringComparison.Ordinal);
        Assert.Contains("--target 3", error, StringComparison.Ordinal);
        Assert.Contains("there is no store here yet", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Van_UnknownVan_NamesThoseThereAre()
    {
        WriteStore();
        (int code, _, string error) = await RunAsync("van", "--out", _out, "--input", _out, "--van", "9");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains("The vans are 1", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Van_TargetNoMoneyReaches_SaysSo()
    {
        WriteStore();
        (int code, _, string error) = await RunAsync("van", "--out", _out, "--input", _out, "--target", "0.99", "--slots", "0");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains("van 1 cannot reach it", error, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        if (Directory.Exists(_out))
        {
            Directory.Delete(_out, recursive: true);
        }
    }

    private static async Task<(int Code, string Text, string Error)> RunAsync(params string[] args)
    {
        using var text = new StringWriter();
        using var error = new StringWriter();
        int code = await CommandHost.RunAsync(args, text, error, TimeProvider.System);
        return (code, text.ToString(), error.ToString());
    }

    /// <summary>Van 1: a valve for 20 every third day, a pump for 25 once a month.</summary>
    private void WriteStore()
    {
        Directory.CreateDirectory(_out);
        File.WriteAllText(Path.Combine(_out, "shop.json"), "{}");
        using Database database = Database.Open(new DatabaseOptions { Threads = 1 });
        foreach (string name in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, name);
        }

        database.Execute("""
            insert into jobs by name
            select 'J' || i as job_id, date '2025-01-01' + i as opened_on, date '2025-01-01' + i as closed_on, 'closing day' as closing_basis, '1' as van, 'unknown' as model_basis,
                'unknown' as age_basis, 'none' as complaint_kind, 'fixed_with_part' as outcome, 'f' as source_file, i as source_line
            from (select unnest(range(1, 300, 3))::integer as i);
            insert into job_parts by name
            select job_id, 1 as line, case when source_line % 10 = 0 then 'B1' else 'A1' end as part_number, 'exact' as part_basis,
                1 as quantity, 'f' as source_file, source_line
            from jobs;
            insert into parts by name
            select n as part_number, n as current_number, d as description, p as price, 1.0 as space_units, true as available, 'f' as source_file, 1 as source_line
            from (values ('A1', 'Valve', 20.00), ('B1', 'Pump', 25.00)) as t(n, d, p);
            """);
        foreach (string name in new[] { "jobs", "job_parts", "parts" })
        {
            string folder = Directory.CreateDirectory(Path.Combine(_out, "store", name)).FullName;
            database.Execute($"copy {Database.Quote(name)} to {Database.Literal(Path.Combine(folder, "part.parquet"))} (format parquet)");
        }
    }
}
