using System.IO.Compression;
using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class JobTruthTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("job-truth-").FullName;

    [Fact]
    public void Read_SomeJobs_HoldsThoseOnly()
    {
        string path = Write("job_id,true_component,odds,recorded_odds", "J1,drain_pump,drain_pump:0.75;none:0.25,none:1", "J2,,none:1,none:1", "J3,none,none:1,none:1");
        IReadOnlyDictionary<string, JobTruth> truths = JobTruth.Read(path, new HashSet<string> { "J1", "J2" });
        Assert.Equal(["J1", "J2"], truths.Keys.Order());
        Assert.Equal(("drain_pump", 0.75, 0.25), (truths["J1"].TrueNeed, truths["J1"].Odds["drain_pump"], truths["J1"].Odds["none"]));
        Assert.Equal(1, truths["J1"].RecordedOdds["none"]);
        Assert.Null(truths["J2"].TrueNeed);
    }

    [Theory]
    [InlineData("job_id,true_component,odds", "J1,none,none:1", "has no column recorded_odds")]
    [InlineData("job_id,true_component,odds,recorded_odds", "J1,none,none:1", "3 cells where the header has 4")]
    [InlineData("job_id,true_component,odds,recorded_odds", "J1,none,none=1,none:1", "does not list odds")]
    [InlineData("job_id,true_component,odds,recorded_odds", "J1,none,none:half,none:1", "does not list odds")]
    public void Read_AnotherLayout_SaysWhatIsWrong(string head, string row, string expected)
    {
        string path = Write(head, row);
        InvalidDataException fault = Assert.Throws<InvalidDataException>(() => JobTruth.Read(path, new HashSet<string> { "J1" }));
        Assert.Contains(expected, fault.Message, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Write(params string[] lines)
    {
        string path = Path.Combine(_folder, "jobs.csv.gz");
        using var file = new StreamWriter(new GZipStream(File.Create(path), CompressionMode.Compress));
        foreach (string line in lines)
        {
            file.WriteLine(line);
        }

        return path;
    }
}
