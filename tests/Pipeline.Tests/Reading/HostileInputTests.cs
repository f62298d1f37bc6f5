using System.IO.Compression;
using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Tests.Staging;

namespace PartsSignal.Pipeline.Tests.Reading;

public sealed class HostileInputTests
{
    private static readonly SourceMap Parts = new()
    {
        Files = "parts.csv",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["description"] = ["Text"] },
    };

    private const string Plain = "Part,Text,Price\nA1,Pump,1\n";

    [Fact]
    public async Task StageAsync_GzipAndZip_ReadAsIfPlain()
    {
        using var rig = new StagingRig();
        rig.Write("parts.csv.gz", Gzip(Encoding.UTF8.GetBytes(Plain)));
        rig.Write("old.zip", Zip(("2019/parts.csv", Plain)));
        IReadOnlyList<StagedFile> files = await rig.StageAllAsync(new ShopSettings { Sources = [Parts with { Files = "parts.csv.gz" }, Parts with { Files = "old.zip/2019/*.csv" }] });
        Assert.Equal(["parts.csv.gz", "old.zip/2019/parts.csv"], files.Select(f => f.SourceFile));
        Assert.All(files, f => Assert.Equal(["A1"], StagingRig.Rows(f, "staged_parts", "part_raw")));
    }

    [Fact]
    public async Task StageAsync_PackedFileThatGrowsBeyondTheLimit_Refused()
    {
        using var rig = new StagingRig();
        rig.Write("parts.csv.gz", Gzip(new byte[5_000_000]));
        var settings = new ShopSettings { Sources = [Parts with { Files = "parts.csv.gz" }], Limits = new() { MaxUnpackedBytes = 1_000_000 } };
        AssertRefused((await rig.StageAllAsync(settings)).Single(), "too_large", "maxUnpackedBytes");
    }

    [Fact]
    public async Task StageAsync_PackedFileThatGrowsTwoHundredfold_Refused()
    {
        using var rig = new StagingRig();
        rig.Write("parts.csv.gz", Gzip(new byte[70_000_000]));
        AssertRefused((await rig.StageAllAsync(new ShopSettings { Sources = [Parts with { Files = "parts.csv.gz" }] })).Single(), "too_large", "maxUnpackRatio");
    }

    [Theory]
    [InlineData("../parts.csv")]
    [InlineData("a/../../parts.csv")]
    [InlineData("/etc/parts.csv")]
    public async Task StageAsync_ZipEntryThatLeadsElsewhere_Refused(string entry)
    {
        using var rig = new StagingRig();
        rig.Write("old.zip", Zip((entry, Plain)));
        AssertRefused((await rig.StageAllAsync(new ShopSettings { Sources = [Parts with { Files = "old.zip/" + entry }] })).Single(), "leads_elsewhere", "path");
    }

    [Fact]
    public async Task StageAsync_BrokenGzip_Refused()
    {
        using var rig = new StagingRig();
        byte[] gz = Gzip(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, 5_000).Select(i => $"A{i},Pump,1\n"))));
        gz[gz.Length / 2] ^= 0x55;
        rig.Write("parts.csv.gz", gz);
        AssertRefused((await rig.StageAllAsync(new ShopSettings { Sources = [Parts with { Files = "parts.csv.gz" }] })).Single(), "broken_file", "packed data");
    }

    [Fact]
    public async Task StageAsync_LinkOutOfTheFolder_Refused()
    {
        using var rig = new StagingRig();
        string outside = Path.GetTempFileName();
        try
        {
            File.WriteAllText(outside, Plain);
            File.CreateSymbolicLink(Path.Combine(rig.Input, "parts.csv"), outside);
            AssertRefused((await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single(), "leads_elsewhere", "link");
        }
        finally
        {
            File.Delete(outside);
        }
    }

    [Fact]
    public async Task StageAsync_RowLongerThanTheLimit_RejectAndTheOthersLoad()
    {
        using var rig = new StagingRig();
        rig.Write("parts.csv", $"Part,Text,Price\nA1,Pump,1\nA2,{new string('x', 3_000_000)},1\nA3,Belt,1\n");
        StagedFile file = (await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single();
        Assert.Equal(["A1", "A3"], StagingRig.Rows(file, "staged_parts", "part_raw"));
        Assert.Equal(["3|-|row_too_long"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_QuoteThatWouldSwallowTheFile_OneReject()
    {
        using var rig = new StagingRig();
        var text = new StringBuilder("Part,Text,Price\nA0,\"Pump,1\n");
        for (int i = 1; i <= 200_000; i++)
        {
            text.Append($"A{i},Belt,1\n");
        }

        rig.Write("parts.csv", text.ToString());
        StagedFile file = (await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single();
        Assert.Equal(["2|-|open_quote"], StagingRig.Rejects(file));
        Assert.Equal(200_001, file.RowsRead);
    }

    [Fact]
    public async Task StageAsync_MoreColumnsThanTheLimit_Refused()
    {
        using var rig = new StagingRig();
        string header = "Part,Text," + string.Join(',', Enumerable.Range(0, 100_000).Select(i => $"c{i}"));
        rig.Write("parts.csv", header + "\n" + new string(',', 100_001) + "\n");
        AssertRefused((await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single(), "too_large", "maxColumns");
    }

    [Theory]
    [InlineData("", "empty_file")]
    [InlineData("\n\n\n", "empty_file")]
    [InlineData("\0\0\0\0\0\0\0\0\0\0", "broken_file")]
    public async Task StageAsync_NothingToRead_Refused(string text, string code)
    {
        using var rig = new StagingRig();
        rig.Write("parts.csv", text);
        AssertRefused((await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single(), code, "");
    }

    [Fact]
    public async Task StageAsync_HeaderThatIsNotTheMaps_StopsWithItsName()
    {
        using var rig = new StagingRig();
        rig.Write("parts.csv", "Part");
        BadInputException bad = await Assert.ThrowsAsync<BadInputException>(() => rig.StageAllAsync(new ShopSettings { Sources = [Parts] }));
        Assert.StartsWith("parts.csv:", bad.Message, StringComparison.Ordinal);
    }

    private static void AssertRefused(StagedFile file, string code, string says)
    {
        Assert.Equal(code, file.Refused?.Code);
        Assert.Contains(says, file.Refused!.Message + file.Refused.Suggestion, StringComparison.Ordinal);
        Assert.Equal((1, 1), (file.RowsRead, file.Rejected));
        Assert.Equal([$"0|-|{code}"], StagingRig.Rejects(file));
        Assert.Empty(file.Tables);
    }

    private static byte[] Gzip(byte[] bytes)
    {
        using var stream = new MemoryStream();
        using (var gzip = new GZipStream(stream, CompressionLevel.SmallestSize))
        {
            gzip.Write(bytes);
        }

        return stream.ToArray();
    }

    private static byte[] Zip(params (string Name, string Text)[] entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create))
        {
            foreach ((string name, string text) in entries)
            {
                using var writer = new StreamWriter(zip.CreateEntry(name).Open());
                writer.Write(text);
            }
        }

        return stream.ToArray();
    }
}
