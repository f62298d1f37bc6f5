namespace PartsSignal.EndToEnd.Tests;

public sealed class RefusedFileTests
{
    private const string Shop = """
        { "sources": [
          { "files": "jobs*.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "complaint": "Fault" } },
          { "files": "old.zip/jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "complaint": "Fault" } } ] }
        """;

    [Fact]
    public async Task Load_BrokenZipAndEmptyFileAmongGoodOnes_GoesOnAndSaysSo()
    {
        using var folder = new ScratchFolder();
        folder.Write("shop/shop.json", Shop);
        folder.Write("shop/jobs-1.csv", "Job,Opened,Fault\n1,2026-08-13,no heat\n");
        folder.Write("shop/jobs-2.csv", "");
        folder.Write("shop/old.zip", "no zip at all");
        Partssignal load = await Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.Equal(2, load.ExitCode);
        Assert.Equal(["jobs-2.csv", "old.zip"], load.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l[..l.IndexOf(':', StringComparison.Ordinal)]));
        Assert.Contains("up to date without 2 files", load.Out, StringComparison.Ordinal);
        Assert.True(Directory.Exists(folder.Sub("out/store/jobs")));
        Assert.Contains("old.zip,broken_file,", await File.ReadAllTextAsync(folder.Sub("out/rejects/refused-files.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Load_NoFileThatCanBeRead_TheLastStoreStays()
    {
        using var folder = new ScratchFolder();
        folder.Write("shop/shop.json", Shop.Replace("old.zip/jobs.csv", "jobs-1.csv", StringComparison.Ordinal));
        folder.Write("shop/jobs-1.csv", "Job,Opened,Fault\n1,2026-08-13,no heat\n");
        Assert.Equal(0, (await Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", folder.Sub("out"))).ExitCode);
        string before = Directory.ResolveLinkTarget(folder.Sub("out/store"), true)?.FullName ?? "";
        folder.Write("shop/jobs-1.csv", "");
        Partssignal load = await Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.Equal(2, load.ExitCode);
        Assert.Equal(before, Directory.ResolveLinkTarget(folder.Sub("out/store"), true)?.FullName ?? "");
    }
}
