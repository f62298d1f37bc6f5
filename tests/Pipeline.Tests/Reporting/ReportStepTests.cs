using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Reporting;

public sealed class ReportStepTests : IDisposable
{
    private const string Evil = "<script>window.ran=1</script>";
    private readonly string _folder = Directory.CreateTempSubdirectory("partssignal-report").FullName;

    [Fact]
    public async Task Run_ShopWithoutAnyFile_WritesACompletePageThatSaysWhatIsMissing()
    {
        string page = await RunAsync([]);
        Assert.Contains("No call of September 2024 is in the files", page, StringComparison.Ordinal);
        Assert.Equal(10, System.Text.RegularExpressions.Regex.Count(page, "<section "));
        Assert.Contains("No file was read.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_MonthOfOneJob_TellsThatOneJob()
    {
        string page = await RunAsync([Job("J1", new(2024, 9, 3))]);
        Assert.Contains("the shop took 1 call", page, StringComparison.Ordinal);
        Assert.Contains("For one call the cause is known: drain pump.", page, StringComparison.Ordinal);
        Assert.Contains("No parts orders are in the files", page, StringComparison.Ordinal);
        Assert.Contains("They need a register", page, StringComparison.Ordinal);
        Assert.Contains("No van plan was made", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_TwoMonths_SetsTheMonthBeforeBeside()
    {
        JobRow[] jobs = [.. Enumerable.Range(0, 30).Select(i => Job($"J{i}", new DateOnly(2024, 8, 1).AddDays(2 * i)) with { ModelFamily = Evil, Brand = Evil })];
        string page = await RunAsync(jobs);
        Assert.Contains("took 14 calls (16 the month before)", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        string reports = Path.Combine(_folder, "out", "reports");
        Assert.Contains("2024-09/index.html", File.ReadAllText(Path.Combine(reports, "index.html")), StringComparison.Ordinal);
        Assert.True(new FileInfo(Path.Combine(reports, "2024-09", "tables.xlsx")).Length > 1000);
        Assert.StartsWith("the shop, September 2024", File.ReadAllText(Path.Combine(reports, "2024-09", "summary.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Twice_GivesTheSameBytes()
    {
        JobRow[] jobs = [.. Enumerable.Range(0, 40).Select(i => Job($"J{i}", new DateOnly(2024, 7, 1).AddDays(2 * i)))];
        Assert.Equal(await RunAsync(jobs), await RunAsync(jobs));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private async Task<string> RunAsync(IReadOnlyList<JobRow> jobs)
    {
        var output = new OutputFolder(Path.Combine(_folder, "out"));
        using var context = new RunContext(_folder, output, new ShopSettings { AsOf = new DateOnly(2024, 9, 30) }, TimeProvider.System);
        ResultTable.Write(context.Database, "jobs", jobs);
        foreach (IRunStep step in (IRunStep[])[new RatesStep(), new CallbacksStep(), new SuppliersStep(), new MonthsStep(), new ReportStep()])
        {
            await step.RunAsync(context, TestContext.Current.CancellationToken);
        }

        return await File.ReadAllTextAsync(Path.Combine(output.Reports, "2024-09", "index.html"), TestContext.Current.CancellationToken);
    }

    private static JobRow Job(string id, DateOnly day) => new(id, day)
    {
        ClosedOn = day.AddDays(1),
        MainComponent = "drain_pump",
        FirstVisitDone = true,
        UnitId = "u-" + id,
        Van = "1",
    };
}
