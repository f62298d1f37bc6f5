using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>All files of a shop, several at a time.</summary>
public sealed class ShopStagingTests
{
    private static readonly SourceMap Parts = new()
    {
        Files = "*.csv",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["description"] = ["Text"], ["price"] = ["Price"] },
    };

    [Fact]
    public async Task RunAsync_OneTwoAndThreeAtATimeAndOneLargerThanTheRest_SameBytesInTheSameOrder()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", List(300));
        rig.Write("b.csv", List(40_000));
        rig.Write("c.csv", List(8_000));
        rig.Write("d.csv", "Part,Text,Price\n");
        var all = new List<(IReadOnlyList<StagedFile> Files, string[] Bytes)>();
        foreach (int cores in new[] { 1, 2, 3 })
        {
            IReadOnlyList<StagedFile> files = await StageAsync(rig, cores);
            all.Add((files, [.. files.SelectMany(f => f.Tables.Values.Append(f.Rejects).OfType<string>().Order(StringComparer.Ordinal)).Select(p => Convert.ToHexString(System.IO.Hashing.XxHash128.Hash(File.ReadAllBytes(p))))]));
        }

        Assert.True(new FileInfo(Path.Combine(rig.Input, "b.csv")).Length > 1 << 22);
        Assert.Equal(["a.csv", "b.csv", "c.csv", "d.csv"], all[0].Files.Select(f => f.SourceFile));
        Assert.Equal([300, 40_000, 8_000, 0], all[0].Files.Select(f => f.RowsRead));
        Assert.Equal([0, 5, 1, 0], all[0].Files.Select(f => f.Rejected));
        Assert.All(all, one =>
        {
            Assert.Equal(all[0].Bytes, one.Bytes);
            Assert.Equal(all[0].Files.Select(f => (f.SourceFile, f.RowsRead, f.Rejected)), one.Files.Select(f => (f.SourceFile, f.RowsRead, f.Rejected)));
        });
    }

    [Fact]
    public async Task RunAsync_MapsThatSuitNoFile_EveryFaultInTheOrderOfTheFilesAndTheOthersStaged()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", "Number,Text,Price\nA1,Pump,1\n");
        rig.Write("b.csv", List(20_000));
        rig.Write("c.csv", "Part,Words,Price\nA1,Pump,1\n");
        IReadOnlyList<StageOutcome> outcomes = await Staging(rig, 2).RunAsync(SourceFile.Find(rig.Input, Settings), CancellationToken.None);
        Assert.Equal([false, true, false], outcomes.Select(o => o.File is not null));
        Assert.Contains("'Part'", outcomes[0].Faults.Single(), StringComparison.Ordinal);
        Assert.Empty(outcomes[1].Faults);
        Assert.Contains("'Text'", outcomes[2].Faults.Single(), StringComparison.Ordinal);
    }

    // The rejects of a file are far smaller than it and are read in the style that it was read in.
    [Fact]
    public async Task RunAsync_MendedRejectsOfACommaFile_ReadInItsStyle()
    {
        using var rig = new StagingRig();
        rig.Write("list.csv", "Part;Text;Price\n" + string.Concat(Enumerable.Range(1, 3_000).Select(i => $"P{i};Pump;{i},50\n")) + "Q1;Belt;cheap\n");
        await StageAsync(rig, 2);
        rig.Write($"mended/{RejectFile.NameOf("list.csv")}", "Part,Text,Price\nQ1,Belt,\"2,50\"\n");
        IReadOnlyList<StagedFile> files = await StageAsync(rig, 2);
        Assert.Equal(2, files.Count);
        Assert.Equal(["Q1|2.50"], StagingRig.Rows(files[1], "staged_parts", "part_raw, price"));
    }

    // As a workbook is with a sheet for every kind.
    [Fact]
    public async Task RunAsync_OneFileInTwoMaps_RejectsOfEachApartAndMendedApart()
    {
        using var rig = new StagingRig();
        rig.Write("list.csv", "Part,Text,Price,Old,New\nP1,Pump,1.50,O1,P1\nQ1,Belt,cheap,,Q1\n");
        var settings = new ShopSettings { Sources = [Parts with { Files = "list.csv" }, Superseded] };
        StagedFile[] files = await StageAsync(rig, settings);
        Assert.Equal([1, 1], files.Select(f => f.Rejected));
        Assert.Equal(["list.csv", "list.csv"], files.Select(f => f.SourceFile));
        Assert.Equal(["list.csv.parts.rejects.csv", "list.csv.supersessions.rejects.csv"], files.Select(f => Path.GetFileName(f.RawRejects)));
        Assert.Contains("cheap", await File.ReadAllTextAsync(files[0].RawRejects!, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        rig.Write("mended/list.csv.supersessions.rejects.csv", "Old,New\nO2,Q1\n");
        files = await StageAsync(rig, settings);
        Assert.Equal(["parts", "supersessions", "supersessions"], files.Select(f => f.Kind));
        Assert.Equal(["O2|Q1"], StagingRig.Rows(files[2], "staged_supersessions", "old_raw, new_raw"));
    }

    [Fact]
    public async Task RunAsync_FileThatLosesItsOtherMap_KeepsItsOwnRejects()
    {
        using var rig = new StagingRig();
        rig.Write("list.csv", "Part,Text,Price,Old,New\nP1,Pump,1.50,O1,P1\nQ1,Belt,cheap,,Q1\n");
        rig.Write("other.csv", "Part,Text,Price\nP2,Pump,dear\n");
        await StageAsync(rig, new ShopSettings { Sources = [Parts with { Files = "list.csv" }, Superseded] });
        StagedFile[] files = await StageAsync(rig, new ShopSettings { Sources = [Parts with { Files = "other.csv" }, Superseded] });
        Assert.Equal(["other.csv.rejects.csv", "list.csv.rejects.csv"], files.Select(f => Path.GetFileName(f.RawRejects)));
        Assert.Contains("Old part is blank.", await File.ReadAllTextAsync(files[1].RawRejects!, TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public void Find_NamesThatWouldBeOneInTheRejectsFolder_ToldApart()
    {
        using var rig = new StagingRig();
        rig.Write("a/b.csv", "Part\n");
        rig.Write("a__b.csv", "Part\n");
        var settings = new ShopSettings { Sources = [Parts with { Files = "a/b.csv" }, Parts with { Files = "a__b.csv" }, Parts with { Files = "a__b.csv" }] };
        Assert.Equal(["a/b.csv", "a__b.csv.parts", "a__b.csv.parts.2"], SourceFile.Find(rig.Input, settings).Select(s => s.OwnName));
        Assert.Equal(["a/b.csv", "a__b.csv.2"], SourceFile.Find(rig.Input, settings with { Sources = [.. settings.Sources.Take(2)] }).Select(s => s.OwnName));
    }

    [Fact]
    public async Task RunAsync_StoppedInTheMiddle_StopsAndLeavesNoStagedFile()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", List(60_000));
        rig.Write("b.csv", List(60_000));
        using var stop = new CancellationTokenSource();
        var stager = new Stager(rig.Output, Settings, StagingRig.Tools, TableStagers.Make, new Told(p => Stop(p, stop)));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new ShopStaging(stager, cores: 2).RunAsync(SourceFile.Find(rig.Input, Settings), stop.Token));
        Assert.DoesNotContain(Directory.EnumerateDirectories(rig.Output.Stage), d => !d.EndsWith(".part", StringComparison.Ordinal));

        static void Stop(StageProgress p, CancellationTokenSource stop)
        {
            if (p.Rows > 0)
            {
                stop.Cancel();
            }
        }
    }

    [Fact]
    public async Task RunAsync_Progress_EveryFileAtTheStartAndWholeAtItsEnd()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", List(300));
        rig.Write("b.csv", List(500));
        var told = new ConcurrentQueue<StageProgress>();
        await new ShopStaging(new Stager(rig.Output, Settings, StagingRig.Tools, TableStagers.Make), new Told(told.Enqueue), 2).RunAsync(SourceFile.Find(rig.Input, Settings), CancellationToken.None);
        Assert.Equal([("a.csv", 0, 0), ("b.csv", 0, 0)], told.Take(2).Select(p => (p.File, p.Rows, p.Bytes)));
        Assert.Equal([("a.csv", 300), ("b.csv", 500)], told.Skip(2).OrderBy(p => p.File, StringComparer.Ordinal).Select(p => (p.File, p.Rows)));
        Assert.All(told.Skip(2), p => Assert.Equal(p.AllBytes, p.Bytes));
        Assert.All(told, p => Assert.Equal(new FileInfo(Path.Combine(rig.Input, p.File)).Length, p.AllBytes));
    }

    private static SourceMap Superseded { get; } =
        new() { Files = "list.csv", Kind = "supersessions", Columns = new Dictionary<string, IReadOnlyList<string>> { ["old_part"] = ["Old"], ["new_part"] = ["New"] } };

    private static ShopSettings Settings { get; } = new() { Sources = [Parts] };

    private static ShopStaging Staging(StagingRig rig, int cores)
    {
        var output = new OutputFolder(Path.Combine(rig.Output.Root, cores.ToString(CultureInfo.InvariantCulture)));
        return new ShopStaging(new Stager(output, Settings, StagingRig.Tools, TableStagers.Make), cores: cores);
    }

    private static async Task<StagedFile[]> StageAsync(StagingRig rig, ShopSettings settings)
    {
        var stager = new Stager(rig.Output, settings, StagingRig.Tools, TableStagers.Make);
        StagedFile[] files = [.. (await new ShopStaging(stager, cores: 2).RunAsync(SourceFile.Find(rig.Input, settings), CancellationToken.None)).Select(o => o.File!)];
        stager.Tidy(files);
        return files;
    }

    private static async Task<IReadOnlyList<StagedFile>> StageAsync(StagingRig rig, int cores) =>
        [.. (await Staging(rig, cores).RunAsync(SourceFile.Find(rig.Input, Settings), CancellationToken.None)).Select(o => o.File!)];

    // Each 7,000th row has no price that can be read.
    private static string List(int rows)
    {
        var text = new StringBuilder("Part,Text,Price\n");
        for (int i = 1; i <= rows; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"P{i},Pump with seal {i % 50} for machines built before the drain hose was changed; two clips and a paper gasket are in the bag,{(i % 7_000 == 0 ? "cheap" : "1.5")}\n");
        }

        return text.ToString();
    }

    private sealed class Told(Action<StageProgress> act) : IProgress<StageProgress>
    {
        public void Report(StageProgress value) => act(value);
    }
}
