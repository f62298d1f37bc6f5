namespace PartsSignal.EndToEnd.Tests;

/// <summary>A shop that has one job log and nothing else: no orders, no prices, no register, no van count.</summary>
public sealed class JobLogAloneTests
{
    [Fact]
    public async Task Run_OneJobLog_GivesACompleteReportThatSaysWhatIsMissing()
    {
        using var folder = new ScratchFolder();
        string log = folder.Sub("shop/jobs-2021.csv");
        Directory.CreateDirectory(Path.GetDirectoryName(log)!);
        await File.WriteAllLinesAsync(log, File.ReadLines(Path.Combine(RepositoryFolder.SampleShop, "jobs-2021.csv")).Take(500));
        Assert.Equal(0, (await Partssignal.RunAsync("inspect", log, "--write")).ExitCode);
        Partssignal run = await Partssignal.RunAsync("run", "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        string month = Directory.EnumerateDirectories(folder.Sub("out/reports")).Single();
        string page = await File.ReadAllTextAsync(Path.Combine(month, "index.html"));
        string[] said =
        [
            "No parts orders are in the files", "No age curve is drawn", "A register helps most", "No van has been counted", "no prices are known for the parts",
        ];
        Assert.All(said, text => Assert.Contains(text, page, StringComparison.OrdinalIgnoreCase));
        Assert.True(File.Exists(Path.Combine(month, "summary.txt")));
        Assert.True(File.Exists(Path.Combine(month, "tables.xlsx")));
        Assert.True(File.Exists(folder.Sub("out/lookup.html")));
    }
}
