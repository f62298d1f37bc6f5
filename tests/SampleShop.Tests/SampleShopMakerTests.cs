using System.IO.Compression;
using System.Text;
using PartsSignal.SampleShop.Writing;

namespace PartsSignal.SampleShop.Tests;

public sealed class SampleShopMakerTests(CommittedSample sample) : IClassFixture<CommittedSample>
{
    [Fact]
    public void Write_CommittedSeed_GivesTheCommittedBytes()
    {
        string[] made = [.. Names(sample.Folder)];
        Assert.Contains("shop.json", made);
        Assert.Contains(Path.Combine("truth", "jobs.csv.gz"), made);
        foreach (string name in made)
        {
            string committed = Path.Combine(RepositoryFolder.SampleShop, name);
            Assert.True(File.Exists(committed), $"{name} is not committed");
            Assert.True(
                Content(committed).AsSpan().SequenceEqual(Content(Path.Combine(sample.Folder, name))),
                $"{name} differs from the committed file");
        }
    }

    [Fact]
    public void Write_CommittedSeed_LeavesNoOldFileBehind()
    {
        string[] committed = [.. Directory.EnumerateFiles(RepositoryFolder.SampleShop)
            .Select(p => Path.GetFileName(p)).Where(n => n[0] != '.' && !n.EndsWith(".md", StringComparison.Ordinal))];
        Assert.Empty(committed.Except(Names(sample.Folder)));
    }

    [Fact]
    public void Write_CommittedSeed_WorldIsHardEnoughAndNotTooWild() =>
        Assert.All(sample.Figures.Bands, b => Assert.InRange(b.Value, b.Low, b.High));

    [Fact]
    public void Write_CommittedSeed_BestOddsExpectTheLossTheyHave() =>
        Assert.Equal(sample.Figures.LossBestExpected, sample.Figures.LossBest, 0.02);

    [Fact]
    public void Write_CommittedSeed_AboutAsManyJobsAsAsked() =>
        Assert.InRange(sample.Figures.Jobs, 19_000, 21_000);

    [Fact]
    public void Write_AnyFile_StaysUnderFourMegabytes() =>
        Assert.All(Directory.EnumerateFiles(sample.Folder, "*", SearchOption.AllDirectories), f => Assert.True(new FileInfo(f).Length < 4_000_000, f));

    [Fact]
    public void Write_PlantedPersonalText_StandsInTheLog()
    {
        string log = string.Concat(LogLayouts.ByYear.Values.Select(l => File.ReadAllText(Path.Combine(sample.Folder, l.File), l.Encoding)));
        string[] planted = [.. File.ReadLines(Path.Combine(sample.Folder, "truth", "planted.csv")).Skip(1)
            .Select(l => l[(l.IndexOf(',', StringComparison.Ordinal) + 1)..].Trim('"'))];
        Assert.InRange(planted.Length, 100, 600);
        Assert.All(planted, p => Assert.Contains(p, log, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Write_OtherSeed_GivesOtherJobsOfTheSameShape()
    {
        string folder = Directory.CreateTempSubdirectory("sample-shop-").FullName;
        try
        {
            SampleShopMaker.Write(new SampleShopOptions(400, 3, folder) { WithDemand = false });
            string[] first = File.ReadAllLines(Path.Combine(folder, "jobs-2023.csv"));
            string[] committed = File.ReadAllLines(Path.Combine(sample.Folder, "jobs-2023.csv"));
            Assert.Equal(committed[0], first[0]);
            Assert.NotEqual(committed[1], first[1]);
            Assert.InRange(first.Length, 40, 200);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(p => Path.GetRelativePath(folder, p)).Order(StringComparer.Ordinal);

    // a packed file is compared unpacked: another version of the runtime may pack the same text otherwise
    private static byte[] Content(string path)
    {
        if (!path.EndsWith(".gz", StringComparison.Ordinal))
        {
            return File.ReadAllBytes(path);
        }

        using var unpacked = new StreamReader(new GZipStream(File.OpenRead(path), CompressionMode.Decompress), Encoding.UTF8);
        return Encoding.UTF8.GetBytes(unpacked.ReadToEnd());
    }
}
