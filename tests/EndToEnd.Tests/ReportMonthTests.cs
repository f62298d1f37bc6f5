namespace PartsSignal.EndToEnd.Tests;

/// <summary>A shop that was closed for a while: the last month that has ended has no call.</summary>
public sealed class ReportMonthTests
{
    [Fact]
    public async Task Report_NoCallInTheLastMonthThatEnded_IsAboutTheNewestWithCallsAndSaysSo()
    {
        using var folder = new ScratchFolder();
        string[] days = ["2024-06-11", .. Enumerable.Range(1, 12).Select(d => $"2024-07-{d:00}"), "2024-10-02"];
        folder.Write("shop/jobs.csv", "Job,Opened,Closed,Fault,Type,Part\n" + string.Concat(days.Select((d, i) => $"{i},{d},{d},does not drain,washer,P{i % 3}\n")));
        folder.Write("shop/shop.json", """
            { "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "closed_on": "Closed", "complaint": "Fault", "appliance_type": "Type", "part": "Part" } } ] }
            """);
        string[] places = ["--input", folder.Sub("shop"), "--out", folder.Sub("out")];
        Partssignal run = await Partssignal.RunAsync(["run", .. places]);
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Contains("2024-07", run.Out, StringComparison.Ordinal);
        Partssignal report = await Partssignal.RunAsync(["report", .. places]);
        Assert.Equal((0, ""), (report.ExitCode, report.Error));
        string[] lines = report.Out.Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("There were no calls in 2024-09. This is the report for 2024-07, the last month with calls.", lines[0]);
        Assert.Contains("the shop took 12 calls", await File.ReadAllTextAsync(lines[1]), StringComparison.Ordinal);
        Assert.Equal(["2024-07"], Directory.EnumerateDirectories(folder.Sub("out/reports")).Select(Path.GetFileName));
        foreach (string month in new[] { "2024-05", "2031-01" })
        {
            Partssignal beyond = await Partssignal.RunAsync(["report", "--month", month, .. places]);
            Assert.Equal(2, beyond.ExitCode);
            Assert.Contains("your files go from 2024-06 to 2024-10", beyond.Error, StringComparison.Ordinal);
        }

        Partssignal asked = await Partssignal.RunAsync(["report", "--month", "2024-09", .. places]);
        Assert.DoesNotContain("There were no calls", asked.Out, StringComparison.Ordinal);
        Assert.Contains("No call of September 2024 is in the files", await File.ReadAllTextAsync(asked.Out.Trim()), StringComparison.Ordinal);
    }
}
