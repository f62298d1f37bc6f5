using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Tests.Transform;

public sealed class UnknownJobsTests(LinesWithoutJobsShop loaded) : IClassFixture<LinesWithoutJobsShop>, IDisposable
{
    private const string Name = "lines.csv.unknown-jobs.rejects.csv";
    internal const string OneJob = "Job,Opened,Fault\n1,2026-08-03,no heat\n";
    private readonly SmallShop _shop = loaded.Copy();

    private string Lost => Path.Combine(_shop.Output.Rejects, Name);

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Load_LinesOfUnknownJobs_StandInTheRejectsAsTheyWere()
    {
        LoadReport report = loaded.Report;
        Assert.Equal(
            [
                "Job,Part,Price,Customer,reject_line,reject_field,reject_reason,reject_message,reject_suggestion,reject_raw",
                "2,A1,\"4,00\",Bob; and son,3,job_id,unknown_job,No job 2 in any job log.,\"Add the log that holds this job, or mend the job number.\",\"2;A1;4,00;\"\"Bob; and son\"\"\"",
                "3,A1,\"5,00\",Dan,5,job_id,unknown_job,No job 3 in any job log.,\"Add the log that holds this job, or mend the job number.\",\"3;A1;5,00;Dan\"",
            ],
            File.ReadAllLines(Lost));
        StagedFile lines = report.Staged.Single(f => f.Kind == "job_parts");
        Assert.Equal((Path.Combine(loaded.Output.Rejects, Name), true), (lines.RawUnknownJobs, File.Exists(lines.RawRejects)));
        Assert.Equal(3, report.Rows.Total.Rejected);
    }

    [Fact]
    public async Task Load_LinesMendedAndDroppedBackIn_AreLoaded()
    {
        _shop.Write($"mended/{Name}", File.ReadAllText(Lost).Replace("2,A1,", "1,B1,", StringComparison.Ordinal).Replace("3,A1,", "1,B2,", StringComparison.Ordinal));
        LoadReport report = await _shop.Load();
        Assert.Equal(["1|A1|3.00", "2|B1|4.00", "3|B2|5.00"], _shop.Rows("from job_parts select line, part_raw, unit_price order by 1"));
        Assert.Empty(_shop.Rows("from rejects where reason_code = 'unknown_job'"));
        FileCounts lines = report.Rows.Files.Single(f => f.File == "lines.csv");
        Assert.Equal((4, 1, 2, 1), (lines.Read, lines.Loaded, lines.Replaced, lines.Rejected));
    }

    [Fact]
    public async Task Load_OneLineMended_OnlyTheOtherCountsAsRefused()
    {
        await _shop.Load();
        string[] lost = File.ReadAllLines(Lost);
        _shop.Write($"mended/{Name}", $"{lost[0]}\n{lost[1].Replace("2,A1,", "1,B1,", StringComparison.Ordinal)}\n");
        Assert.Equal((1, 2), Lines(await _shop.Load()));
        Assert.Equal(["lines.csv|5"], _shop.Rows("from rejects select source_file, source_line where reason_code = 'unknown_job'"));

        // A newer export has a line more above it: the mended line is told by the job that it lacked.
        _shop.Write("lines.csv", "Job;Part;Price;Customer\n1;A9;1,00;Eve\n1;A1;3,00;Ann\n2;A1;4,00;\"Bob; and son\"\n1;A2;dear;Cid\n3;A1;5,00;Dan\n");
        Assert.Equal((1, 2), Lines(await _shop.Load()));
        Assert.Equal(["lines.csv|6"], _shop.Rows("from rejects select source_file, source_line where reason_code = 'unknown_job'"));

        static (long Replaced, long Rejected) Lines(LoadReport report) => report.Rows.Files.Where(f => f.File == "lines.csv").Select(f => (f.Replaced, f.Rejected)).Single();
    }

    [Fact]
    public async Task Load_TheLogComesLater_FileGone()
    {
        await _shop.Write("jobs.csv", OneJob + "2,2026-08-04,no heat\n3,2026-08-04,no heat\n").Load();
        Assert.False(File.Exists(Lost));
        Assert.Empty(_shop.Rows("from rejects where reason_code = 'unknown_job'"));
    }

    [Fact]
    public async Task Load_OneOfThemBecomesKnown_FileHoldsTheOther()
    {
        await _shop.Write("jobs.csv", OneJob + "2,2026-08-04,no heat\n").Load();
        Assert.Equal(["3,A1,"], File.ReadAllLines(Lost).Skip(1).Select(l => l[..5]));
    }

    [Fact]
    public async Task Load_NothingNew_LinesAreNotWrittenAgain()
    {
        // Older than this load, younger than the age limit of refused rows.
        DateTime before = File.GetLastWriteTimeUtc(Lost).AddDays(-10);
        File.SetLastWriteTimeUtc(Lost, before);
        await _shop.Load();
        Assert.Equal(before, File.GetLastWriteTimeUtc(Lost));
        File.Delete(Lost);
        await _shop.Load();
        Assert.Equal(3, File.ReadAllLines(Lost).Length);
    }
}

/// <summary>A shop with one job and part lines of three, loaded once.</summary>
public sealed class LinesWithoutJobsShop : SharedShop
{
    internal override void Write(SmallShop shop) => shop.Write("jobs.csv", UnknownJobsTests.OneJob)
        .Write("lines.csv", "Job;Part;Price;Customer\n1;A1;3,00;Ann\n2;A1;4,00;\"Bob; and son\"\n1;A2;dear;Cid\n3;A1;5,00;Dan\n")
        .Write("shop.json", """
            { "sources": [
              { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "complaint": "Fault" } },
              { "files": "lines.csv", "kind": "job_parts", "columns": { "job_id": "Job", "part": "Part", "price": "Price" } } ] }
            """);
}
