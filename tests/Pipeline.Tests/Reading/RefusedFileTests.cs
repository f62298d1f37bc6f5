using System.IO.Compression;
using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;
using PartsSignal.Pipeline.Tests.Staging;

namespace PartsSignal.Pipeline.Tests.Reading;

/// <summary>Files that cannot be read as a whole: each is refused by itself, with a reason, and the others are read.</summary>
public sealed class RefusedFileTests
{
    private const string Plain = "Part,Text,Price\nA1,Pump,1\n";

    /// <summary>Codes that a test of this class, of <see cref="ChangedFileTests"/> or of <see cref="HostileInputTests"/> produces.</summary>
    internal static readonly IReadOnlyList<string> Codes =
        [ReasonCode.BrokenFile, ReasonCode.UnreadableFile, ReasonCode.FileGone, ReasonCode.FileChanged, ReasonCode.EmptyFile, ReasonCode.TooLarge, ReasonCode.LeadsElsewhere];

    private static readonly SourceMap Parts = new()
    {
        Files = "*.csv",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["description"] = ["Text"] },
    };

    [Fact]
    public async Task StageAsync_BrokenZipAmongGoodFiles_OnlyTheZipIsRefused()
    {
        using var rig = new StagingRig();
        rig.Write("good.csv", Plain);
        rig.Write("old.zip", "PK and then nothing that a zip has"u8.ToArray());
        IReadOnlyList<StagedFile> files = await rig.StageAllAsync(new ShopSettings { Sources = [Parts, Parts with { Files = "old.zip/2019/*.csv" }] });
        Assert.Equal([null, "broken_file"], files.Select(f => f.Refused?.Code));
        Assert.Equal("old.zip", files[1].SourceFile);
        Assert.Equal(["A1"], StagingRig.Rows(files[0], "staged_parts", "part_raw"));
    }

    [Fact]
    public async Task StageAsync_BrokenZipThatNoMapNames_IsNoMatter()
    {
        using var rig = new StagingRig();
        rig.Write("good.csv", Plain);
        rig.Write("old.zip", "PK and then nothing that a zip has"u8.ToArray());
        Assert.Null((await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single().Refused);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task StageAsync_PackedBytesDamagedOrCutShort_Refused(bool cut)
    {
        using var rig = new StagingRig();
        byte[] zip = Zip(CompressionLevel.NoCompression);
        byte[] gz = Gzip();
        int place = zip.AsSpan().IndexOf("Pump"u8);
        zip[place] ^= 1;
        rig.Write("old.zip", zip);
        rig.Write("new.csv.gz", cut ? gz[..^12] : [.. gz[..(gz.Length / 2)], (byte)(gz[gz.Length / 2] ^ 0x41), .. gz[(gz.Length / 2 + 1)..]]);
        IReadOnlyList<StagedFile> files = await rig.StageAllAsync(new ShopSettings { Sources = [Parts with { Files = "old.zip/*.csv" }, Parts with { Files = "new.csv.gz" }] });
        Assert.Equal(["broken_file", "broken_file"], files.Select(f => f.Refused?.Code));
    }

    [Theory]
    [InlineData("\u0089PNG\r\n\u001a\n\0\0\0\rIHDR")]
    [InlineData("%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\n")]
    [InlineData("\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1\0\0\0\0")]
    [InlineData("PK\u0003\u0004\u0014\0\u0006\0")]
    public async Task StageAsync_PictureDocumentOrWorkbookNamedCsv_Refused(string beginning)
    {
        using var rig = new StagingRig();
        rig.Write("good.csv", Plain);
        byte[] noise = new byte[6_000];
        new Random(5).NextBytes(noise);
        rig.Write("photo.csv", [.. Encoding.Latin1.GetBytes(beginning), .. noise]);
        IReadOnlyList<StagedFile> files = await rig.StageAllAsync(new ShopSettings { Sources = [Parts] });
        Assert.Equal([null, "The file holds no text: it is a picture, a document or a workbook under another name."], files.Select(f => f.Refused?.Message));
    }

    [Fact]
    public async Task StageAsync_TextOfOldPrograms_IsRead()
    {
        using var rig = new StagingRig();
        rig.Write("good.csv", Encoding.Latin1.GetBytes("Part,Text,Price\r\nA1,Pumpe f\u00fcr 230 V,1\r\n\u001a\0\0\0"));
        Assert.Null((await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single().Refused);
    }

    [Fact]
    public async Task StageAsync_WorkbookWithAPassword_SaysSo()
    {
        using var rig = new StagingRig();
        rig.Write("good.csv", Plain);
        rig.Write("jobs.xlsx", CompoundFileOf("EncryptedPackage"));
        StagedFile[] files = [.. await rig.StageAllAsync(new ShopSettings { Sources = [Parts, Parts with { Files = "jobs.xlsx" }] })];
        Assert.Equal(("The workbook has a password.", "Save it without one and add it again."), (files[1].Refused?.Message, files[1].Refused?.Suggestion));
    }

    // The least of a compound file ([MS-CFB]): a header, a table of sectors and a directory with one stream.
    private static byte[] CompoundFileOf(string stream)
    {
        const int Sector = 512;
        byte[] file = new byte[Sector * 4];
        TextTables.CompoundMark.CopyTo(file);
        Word(24, 0x0003003e);
        Word(28, 0x0009fffe);
        Word(32, 6);
        Word(44, 1);
        Word(48, 1);
        Word(56, 0);
        Word(60, 0xfffffffe);
        Word(68, 0xfffffffe);
        file.AsSpan(76, Sector - 76).Fill(0xff);
        Word(76, 0);
        file.AsSpan(Sector, Sector).Fill(0xff);
        Word(Sector, 0xfffffffd);
        Word(Sector + 4, 0xfffffffe);
        Word(Sector + 8, 0xfffffffe);
        Entry(Sector * 2, "Root Entry", 5, 0xfffffffe, 0);
        Entry((Sector * 2) + 128, stream, 2, 2, 100);
        return file;

        void Word(int at, uint value) => System.Buffers.Binary.BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(at), value);

        void Entry(int at, string name, byte kind, uint start, uint length)
        {
            Encoding.Unicode.GetBytes(name).CopyTo(file, at);
            file[at + 64] = (byte)((name.Length + 1) * 2);
            file[at + 66] = kind;
            Word(at + 116, start);
            Word(at + 120, length);
        }
    }

    [Fact]
    public async Task StageAsync_WorkbookWithADamagedSheet_Refused()
    {
        using var rig = new StagingRig();
        byte[] workbook = WorkbookMaker.Make([[WorkbookMaker.Text("Part"), WorkbookMaker.Text("Text")], [WorkbookMaker.Text("A1"), WorkbookMaker.Text("Pump")]]);
        workbook.AsSpan(workbook.Length / 2, 200).Clear();
        rig.Write("parts.xlsx", workbook);
        Assert.Equal("broken_file", (await rig.StageAllAsync(new ShopSettings { Sources = [Parts with { Files = "parts.xlsx" }] })).Single().Refused?.Code);
    }

    [Fact]
    public async Task StageAsync_FileThatVanishedAfterTheListing_Refused()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain);
        rig.Write("b.csv", Plain);
        var settings = new ShopSettings { Sources = [Parts] };
        IReadOnlyList<SourceFile> listed = SourceFile.Find(rig.Input, settings);
        File.Delete(Path.Combine(rig.Input, "a.csv"));
        var stager = new Stager(rig.Output, settings, StagingRig.Tools, TableStagers.Make);
        Assert.Equal("file_gone", (await stager.StageAsync(listed[0], 1, CancellationToken.None)).Refused?.Code);
        Assert.Null((await stager.StageAsync(listed[1], 1, CancellationToken.None)).Refused);
    }

    [Fact]
    public async Task StageAsync_FileThatAnotherProgramHolds_Refused()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain);
        using var held = new FileStream(Path.Combine(rig.Input, "a.csv"), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        Assert.Equal("unreadable_file", (await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single().Refused?.Code);
    }

    [Fact]
    public async Task StageAsync_FileThatItsOwnerMayNotRead_Refused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "needs a user whom file modes bind");
        using var rig = new StagingRig();
        rig.Write("a.csv", Plain);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(Path.Combine(rig.Input, "a.csv"), UnixFileMode.None);
        }

        Assert.Equal("unreadable_file", (await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single().Refused?.Code);
    }

    [Fact]
    public async Task StageAsync_ReadableAgain_RowsThereAndTheListGone()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", "");
        await rig.StageAllAsync(new ShopSettings { Sources = [Parts] });
        string list = Path.Combine(rig.Output.Rejects, "refused-files.csv");
        Assert.Contains("a.csv,empty_file,", File.ReadAllText(list), StringComparison.Ordinal);
        rig.Write("a.csv", Plain);
        Assert.Equal(1, (await rig.StageAllAsync(new ShopSettings { Sources = [Parts] })).Single().RowsRead);
        Assert.False(File.Exists(list));
    }

    private static byte[] Zip(CompressionLevel level)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create))
        {
            using var writer = new StreamWriter(zip.CreateEntry("parts.csv", level).Open());
            writer.Write(Plain);
        }

        return stream.ToArray();
    }

    private static byte[] Gzip()
    {
        using var stream = new MemoryStream();
        using (var gzip = new GZipStream(stream, CompressionLevel.Optimal))
        {
            gzip.Write(Encoding.UTF8.GetBytes(Plain + string.Concat(Enumerable.Range(0, 3_000).Select(i => $"B{i * 7_919 % 10_007},Belt,1\n"))));
        }

        return stream.ToArray();
    }
}
