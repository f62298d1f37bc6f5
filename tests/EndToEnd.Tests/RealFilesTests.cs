using System.Text.Json.Nodes;

namespace PartsSignal.EndToEnd.Tests;

public sealed class RealFilesTests
{
    [Theory]
    [InlineData("open-repair-2022", 23_940)]
    [InlineData("open-repair-2019", 12_633)]
    [InlineData("excavator", 5_485)]
    public async Task Run_FileFromElsewhere_AccountsForEveryRowAndSaysWhatIsMissing(string map, int rows)
    {
        if (RepositoryFolder.RealFiles is not { } input)
        {
            Assert.Skip("the files from elsewhere are not on this machine");
            return;
        }

        using var folder = new ScratchFolder();
        string shopFile = Path.Combine(AppContext.BaseDirectory, "Maps", map, "shop.json");
        Partssignal run = await Partssignal.RunAsync("run", "--input", input, "--shop", shopFile, "--out", folder.Sub("out"));

        // None of these logs names a part, an outcome or a diagnosis: everything else is published, and one line says so.
        Assert.Matches(@"\AOf [0-9,]+ calls none says what failed, so no rate can be given\. [^\n]+\n\z", run.Error.ReplaceLineEndings("\n"));
        Assert.Equal(2, run.ExitCode);
        JsonNode record = JsonNode.Parse(await File.ReadAllTextAsync(folder.Sub("out/run.json")))!;
        Assert.Equal(rows, (int)record["rows"]!["read"]!);
        Assert.Equal(rows, new[] { "loaded", "duplicate", "replaced", "rejected" }.Sum(w => (int)record["rows"]![w]!));
        Assert.True((int)record["rows"]!["loaded"]! > 0.85 * rows);
        Assert.Null(record["van"]!["completion_plan"]);
        string page = await File.ReadAllTextAsync(Directory.EnumerateFiles(folder.Sub("out/reports"), "index.html", SearchOption.AllDirectories).Last());
        Assert.Contains("register", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
    }
}
