using System.IO.Compression;
using System.IO.Hashing;
using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Tests.Staging;

namespace PartsSignal.Pipeline.Tests.Reading;

/// <summary>Files that another program writes to while they are read: what is staged is always what its hash says.</summary>
public sealed class ChangedFileTests
{
    private const string Header = "Part,Text,Price\n";
    private const string Plain = Header + "A1,Pump,1\nA2,Belt,2\n";
    private const string Longer = Plain + "A3,Valve,3\n";

    private static readonly SourceMap Parts = new()
    {
        Files = "*.csv",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["description"] = ["Text"] },
    };

    private static readonly ShopSettings Settings = new() { Sources = [Parts] };

    [Theory]
    [InlineData(Longer)]
    [InlineData(Header + "A1,Pump,1\n")]
    [InlineData(Header + "A1,Pump,1\nA2,Be")]
    [InlineData(Header + "A1,Pump,1\nB2,Belt,2\n")]
    [InlineData("")]
    public async Task StageAsync_ChangedOnceAfterTheScan_StagedAsItIsNow(string text)
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain);
        DateTime written = File.GetLastWriteTimeUtc(Path.Combine(rig.Input, "a.csv"));
        var change = new Meanwhile(rows: 0, times: 1, () =>
        {
            rig.Write("a.csv", text);
            File.SetLastWriteTimeUtc(Path.Combine(rig.Input, "a.csv"), written);
        });
        StagedFile staged = (await rig.StageAllAsync(Settings, change)).Single();
        StagedFile again = (await rig.StageAllAsync(Settings)).Single();
        using var fresh = new StagingRig();
        StagedFile alone = await fresh.StageAsync("a.csv", text, Parts);
        Assert.Equal(text.Length == 0 ? "empty_file" : null, staged.Refused?.Code);
        Assert.Equal(alone.ContentHash, staged.ContentHash);
        Assert.Equal(StagingRig.Rows(alone, "staged_parts", "part_raw"), StagingRig.Rows(staged, "staged_parts", "part_raw"));
        Assert.Equal(StagingRig.Rejects(alone), StagingRig.Rejects(staged));
        Assert.Equal(StagingRig.Rows(alone, "staged_parts", "part_raw"), StagingRig.Rows(again, "staged_parts", "part_raw"));
    }

    [Fact]
    public async Task StageAsync_HeaderHalfWrittenAndThenMore_RefusedAloneAndNoFaultOfTheMap()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain);
        string[] states = ["Pa", Longer];
        int state = 0;
        var change = new Meanwhile(rows: 0, times: 2, () => rig.Write("a.csv", states[state++]));
        Assert.Equal("file_changed", (await rig.StageAllAsync(Settings, change)).Single().Refused?.Code);
        Assert.Equal(3, (await rig.StageAllAsync(Settings)).Single().RowsRead);
    }

    [Fact]
    public async Task StageAsync_OtherColumnsAfterTheScan_TheMapDoesNotSuitTheFileAsItIsNow()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain);
        var change = new Meanwhile(rows: 0, times: 1, () => rig.Write("a.csv", "Number,Name\nA1,Pump\n"));
        BadInputException bad = await Assert.ThrowsAsync<BadInputException>(() => rig.StageAllAsync(Settings, change));
        Assert.Contains("Part", string.Join('\n', bad.Faults), StringComparison.Ordinal);
    }

    [Fact]
    public async Task StageAsync_ChangedAgainAndAgain_RefusedAloneAndReadTheNextTime()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain + "A9\n");
        rig.Write("b.csv", Plain);
        string path = Path.Combine(rig.Input, "a.csv");
        var change = new Meanwhile(rows: 0, times: 2, () => File.AppendAllText(path, "A3,Valve,3\n"));
        IReadOnlyList<StagedFile> staged = await rig.StageAllAsync(Settings, change);
        Assert.Equal(["file_changed", null], staged.Select(s => s.Refused?.Code));
        Assert.Equal((1, 1, ""), (staged[0].RowsRead, staged[0].Rejected, staged[0].ContentHash));
        Assert.Empty(staged[0].Tables);
        Assert.Equal(["0|-|file_changed"], StagingRig.Rejects(staged[0]));
        Assert.Equal(["A1", "A2"], StagingRig.Rows(staged[1], "staged_parts", "part_raw"));
        Assert.Equal(staged.Select(s => s.Folder).Order(), Directory.EnumerateDirectories(rig.Output.Stage).Order());
        Assert.Equal(["refused-files.csv"], Directory.EnumerateFiles(rig.Output.Rejects).Select(Path.GetFileName));
        staged = await rig.StageAllAsync(Settings);
        Assert.Equal(["A1", "A2", "A3", "A3"], StagingRig.Rows(staged[0], "staged_parts", "part_raw"));
        Assert.Equal(Convert.ToHexStringLower(XxHash128.Hash(File.ReadAllBytes(path))), staged[0].ContentHash);
        Assert.Equal([false, true], staged.Select(s => s.FromCache));
    }

    [Fact]
    public async Task StageAsync_GrowsWhileItsRowsAreRead_ReadAgainWithWhatWasAdded()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Header + string.Concat(Enumerable.Range(1, 25_000).Select(i => $"N{i},Pump and everything that goes with it,{i}\n")));
        var change = new Meanwhile(rows: 10_000, times: 1, () => File.AppendAllText(Path.Combine(rig.Input, "a.csv"), "Last,Valve,3\n"));
        StagedFile staged = (await rig.StageAllAsync(Settings, change)).Single();
        Assert.Equal((null, 25_001), (staged.Refused?.Code, staged.RowsRead));
        Assert.Equal("Last", StagingRig.Rows(staged, "staged_parts", "part_raw")[^1]);
        Assert.True((await rig.StageAllAsync(Settings)).Single().FromCache);
    }

    [Fact]
    public async Task StageAsync_WrittenToWithoutEnd_RefusedInsteadOfFollowed()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Header + string.Concat(Enumerable.Range(1, 25_000).Select(i => $"N{i},Pump and everything that goes with it,{i}\n")));
        string more = string.Concat(Enumerable.Repeat("More,Pump and everything that goes with it,1\n", 12_000));
        var change = new Meanwhile(rows: 10_000, times: int.MaxValue, () => File.AppendAllText(Path.Combine(rig.Input, "a.csv"), more));
        Assert.Equal("file_changed", (await rig.StageAllAsync(Settings, change)).Single().Refused?.Code);
    }

    [Fact]
    public async Task StageAsync_VanishesAfterTheScan_Refused()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain);
        rig.Write("b.csv", Plain);
        var change = new Meanwhile(rows: 0, times: 1, () => File.Delete(Path.Combine(rig.Input, "a.csv")));
        Assert.Equal(["file_gone", null], (await rig.StageAllAsync(Settings, change)).Select(s => s.Refused?.Code));
    }

    [Fact]
    public async Task StageAsync_WorkbookAndPackedFileReplacedAfterTheScan_StagedAsTheyAreNow()
    {
        using var rig = new StagingRig();
        rig.Write("parts.xlsx", Workbook("A1"));
        rig.Write("parts.csv.gz", Gzip(Plain));
        rig.Write("old.zip", Zip(Plain));
        var settings = new ShopSettings { Sources = [Parts with { Files = "parts.xlsx" }, Parts with { Files = "parts.csv.gz" }, Parts with { Files = "old.zip/*.csv" }] };
        var change = new Meanwhile(rows: 0, times: 1, () =>
        {
            rig.Write("parts.xlsx", Workbook("X1"));
            rig.Write("parts.csv.gz", Gzip(Longer));
            rig.Write("old.zip", Zip(Longer));
        });
        IReadOnlyList<StagedFile> staged = await rig.StageAllAsync(settings, change);
        Assert.Equal(["X1", "A1 A2 A3", "A1 A2 A3"], staged.Select(s => string.Join(' ', StagingRig.Rows(s, "staged_parts", "part_raw"))));
        Assert.All(await rig.StageAllAsync(settings), s => Assert.True(s.FromCache));
    }

    private static byte[] Workbook(string part) =>
        WorkbookMaker.Make([[WorkbookMaker.Text("Part"), WorkbookMaker.Text("Text")], [WorkbookMaker.Text(part), WorkbookMaker.Text("Pump")]]);

    private static byte[] Gzip(string text)
    {
        using var stream = new MemoryStream();
        using (var gzip = new GZipStream(stream, CompressionLevel.Optimal))
        {
            gzip.Write(Encoding.UTF8.GetBytes(text));
        }

        return stream.ToArray();
    }

    private static byte[] Zip(string text)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create))
        {
            using Stream entry = zip.CreateEntry("parts.csv").Open();
            entry.Write(Encoding.UTF8.GetBytes(text));
        }

        return stream.ToArray();
    }

    // Staging tells how far it is on its own thread, between the scan and the rows, and so lets others act there.
    private sealed class Meanwhile(long rows, int times, Action act) : IProgress<StageProgress>
    {
        private int _left = times;

        public void Report(StageProgress value)
        {
            if (value.Rows == rows && _left-- > 0)
            {
                act();
            }
        }
    }
}
