namespace PartsSignal.EndToEnd.Tests;

public sealed class BadInputTests
{
    [Fact]
    public async Task Run_MissingFolder_EndsWithTwoAndWritesNothing()
    {
        using var folder = new ScratchFolder();
        Partssignal run = await Partssignal.RunAsync("run", "--input", folder.Sub("nowhere"), "--out", folder.Sub("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("nowhere", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.Sub("out")));
    }

    [Theory]
    [InlineData("run", "--no-such-option", "1")]
    [InlineData("fly", "--input", "x")]
    public async Task Run_UnknownOptionOrVerb_EndsWithTwo(params string[] args)
    {
        Partssignal run = await Partssignal.RunAsync(args);
        Assert.Equal(2, run.ExitCode);
        Assert.NotEqual("", run.Error);
    }

    [Fact]
    public async Task Run_BrokenShopFile_ListsEveryFaultAndWritesNothing()
    {
        using var folder = new ScratchFolder();
        folder.Write("jobs.csv", "Job,Date\n1,2026-01-02\n");
        folder.Write("shop.json", """
            {
              "callbackDays": -3,
              "serviceTarget": 1.7,
              "colour": "red",
              "sources": [ { "files": "jobs.csv", "kind": "jabs", "columns": { "job_id": "Job", "opend_on": "Date" } } ]
            }
            """);
        Partssignal run = await Partssignal.RunAsync("run", "--input", folder.Path, "--out", folder.Sub("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.All(["callbackDays", "serviceTarget", "colour", "jabs"], fault => Assert.Contains(fault, run.Error, StringComparison.Ordinal));
        Assert.False(Directory.Exists(folder.Sub("out")));
    }

    [Fact]
    public async Task Run_ShopFileThatIsNoJson_SaysWhere()
    {
        using var folder = new ScratchFolder();
        folder.Write("shop.json", "{ \"shop\": \"x\",\n \"sources\": [ }");
        Partssignal run = await Partssignal.RunAsync("run", "--input", folder.Path, "--out", folder.Sub("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("shop.json", run.Error, StringComparison.Ordinal);
        Assert.Contains("line 2", run.Error, StringComparison.Ordinal);
    }
}
