using System.Text;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>What a first-time user does: look at one unknown file, let the map be written, load, edit nothing.</summary>
public sealed class InspectAndLoadTests
{
    private const int BeginningRows = 600;

    /// <summary>The last file of each kind: of the job logs the newest.</summary>
    public static TheoryData<string> FileOfEachKind => [.. Kinds.Select(k => k.Last().Files)];

    public static TheoryData<string> OtherFiles => [.. Kinds.SelectMany(k => k.SkipLast(1)).Select(s => s.Files)];

    private static IEnumerable<IGrouping<string, SourceMap>> Kinds => ShopFile.Load(RepositoryFolder.SampleShop).Sources.GroupBy(s => s.Kind);

    [Theory]
    [MemberData(nameof(FileOfEachKind))]
    public Task InspectWriteThenLoad_BeginningOfASampleFile_EveryRowAccountedForAndTheKindIsTheShops(string name) => AssertSampleFileAsync(name, BeginningRows);

    [LongTheory]
    [MemberData(nameof(OtherFiles))]
    public Task InspectWriteThenLoad_BeginningOfAnotherFile_EveryRowAccountedForAndTheKindIsTheShops(string name) => AssertSampleFileAsync(name, BeginningRows);

    [SlowFact]
    public async Task InspectWriteThenLoad_EverySampleFile_EveryRowAccountedForAndTheKindIsTheShops()
    {
        foreach (string name in Kinds.SelectMany(k => k).Select(s => s.Files))
        {
            await AssertSampleFileAsync(name, int.MaxValue);
        }
    }

    private static async Task AssertSampleFileAsync(string name, int rows)
    {
        using var folder = new ScratchFolder();
        SourceMap map = ShopFile.Load(RepositoryFolder.SampleShop).Sources.Single(s => s.Files == name);
        // Part lines without the log of their jobs belong to no job, and the load says so; every other kind stands by itself.
        string problem = map.Kind == "job_parts" ? "every row was rejected" : "";
        JsonNode file = await InspectAndLoadAsync(folder, Path.Combine(RepositoryFolder.SampleShop, name), problem, rows);
        Assert.Equal(map.Kind, (string)file["kind"]!);
        Assert.True((long)file["read"]! >= 5);
        Assert.True(map.Kind == "job_parts" ? (long)file["rejected"]! == (long)file["read"]! : (long)file["rejected"]! * 50 <= (long)file["read"]!);
    }

    [Theory]
    [InlineData("open-repair-2022.csv", 23_940)]
    [InlineData("open-repair-2019-older-header.csv", 12_633)]
    public async Task InspectWriteThenLoad_FileFromElsewhere_EveryRowAccountedFor(string name, long rows)
    {
        if (RepositoryFolder.RealFiles is not { } real)
        {
            Assert.Skip("the files from elsewhere are not on this machine");
            return;
        }

        using var folder = new ScratchFolder();
        JsonNode file = await InspectAndLoadAsync(folder, Path.Combine(real, name));
        Assert.Equal("jobs", (string)file["kind"]!);
        Assert.Equal(rows, (long)file["read"]!);
        Assert.True((long)file["loaded"]! > 0.9 * rows);
    }

    private static async Task<JsonNode> InspectAndLoadAsync(ScratchFolder folder, string path, string problem = "", int rows = int.MaxValue)
    {
        Directory.CreateDirectory(folder.Sub("shop"));
        string copy = Path.Combine(folder.Sub("shop"), Path.GetFileName(path));
        if (rows < int.MaxValue && Path.GetExtension(path) is ".csv" or ".tsv")
        {
            // Latin-1 keeps every byte, whatever the encoding is.
            await File.WriteAllLinesAsync(copy, File.ReadLines(path, Encoding.Latin1).Take(rows), Encoding.Latin1);
        }
        else
        {
            File.Copy(path, copy);
        }

        Partssignal inspect = await Partssignal.RunAsync("inspect", copy, "--write");
        Assert.Equal((0, ""), (inspect.ExitCode, inspect.Error));
        Partssignal load = await Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", folder.Sub("out"), "--format", "json");
        Assert.Equal(problem.Length == 0 ? 0 : 2, load.ExitCode);
        Assert.Contains(problem, load.Error, StringComparison.Ordinal);

        // Where nothing is wrong, what was assumed is all that is said.
        string[] assumed = ["Your files name no vans", "These have no closing day"];
        Assert.True(problem.Length > 0 || load.Error.Length == 0 || assumed.Any(a => load.Error.StartsWith(a, StringComparison.Ordinal)), load.Error);
        JsonArray books = JsonNode.Parse(load.Out)!.AsArray();
        JsonNode file = Assert.Single(books, b => (string)b!["file"]! == Path.GetFileName(path))!;
        Assert.Equal((long)file["read"]!, new[] { "loaded", "duplicate", "replaced", "rejected" }.Sum(w => (long)file[w]!));
        return file;
    }
}
