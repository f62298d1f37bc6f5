using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Job numbers are tested: one that stands for different units or days does not tell a job.</summary>
public sealed class JobKeyTests
{
    private const string FileBooks = "from loads select source_file, rows_read, loaded, duplicate, replaced, rejected order by 1";

    [Fact]
    public async Task Load_NumberThatFewRowsHave_TheOthersAreJobsOfTheirOwn()
    {
        using var shop = new SmallShop();
        shop.Write("jobs.csv", "Note,Day,Serial,Said\n" + string.Concat(Enumerable.Range(1, 20).Select(i => $"{(i % 5 == 0 ? $"N{i}" : "")},2026-08-{i:00},S{i:000},no heat\n")));
        shop.Write("shop.json", """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Note", "opened_on": "Day", "serial": "Serial", "complaint": "Said" } } ] }""");
        await shop.Load();
        Assert.Equal(["20|4"], shop.Rows("from jobs select count(*), count(*) filter (job_id like 'N%')"));
    }

    [Fact]
    public async Task Load_RowsWithoutNumbersThatDifferInTheirPartsAlone_AreOneJob()
    {
        using var shop = new SmallShop();
        shop.Write("jobs.csv", "Time,Machine,Part\n2026-08-03 06:00,M1,P1\n2026-08-03 06:00,M1,P2\n2026-08-03 06:00,M2,P1\n2026-08-04 06:00,M1,P1\n2026-08-05 06:00,,P1\n2026-08-05 06:00,,P2\n");
        shop.Write("shop.json", """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "opened_on": "Time", "serial": "Machine", "part": "Part" } } ] }""");
        await shop.Load();

        // Without a machine nothing says that two rows are one job.
        Assert.Equal(["1", "1", "1", "1", "2"], shop.Rows("from job_parts select count(*) as lines group by job_id order by 1"));
        Assert.Equal(["6|6"], shop.Rows("from loads select rows_read, loaded"));
    }

    [Fact]
    public void Combine_TwoYearlyLogsNumberedAnew_KeepEveryJob()
    {
        using var shop = new TransformShop();
        shop.Add(Year(1, 2023, 200)).Add(Year(2, 2024, 200)).Combine();
        Assert.Equal(["file-1.csv|200|200|0|0|0", "file-2.csv|200|200|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["400|400"], shop.Rows("from jobs select count(*), count(distinct job_id)"));
        Assert.Equal(["2023/7", "2024/7"], shop.Rows("from jobs select job_id where job_id like '%/7' order by 1"));
        Assert.Equal(
            "Job numbers in file-1.csv, file-2.csv: 200 stand for different units or days, so a job is its number and year (1 is 2023/1).",
            JobKey.Read(shop.Database)!.Sentence);
    }

    [Theory]
    [InlineData("file", "file-1/7 file-2/7")]
    [InlineData("number", "7 7~2")]
    public void Combine_SomebodySaidWhatTellsThemApart_ThatIsAdded(string way, string jobs)
    {
        using var shop = new TransformShop();
        shop.Add(Year(1, 2023, 30)).Add(Year(2, 2024, 30)).Combine(new TransformOptions { JobKey = way });
        Assert.Equal(jobs.Split(' '), shop.Rows("from jobs select job_id where regexp_matches(job_id, '(^|/)7($|~)') order by 1"));
        Assert.Equal(way, JobKey.Read(shop.Database)!.Way);
    }

    [Fact]
    public void Combine_YearlyLogsAndANewerExportOfOne_ReplaceOnlyInThatYear()
    {
        using var shop = new TransformShop();
        shop.Add(Year(1, 2023, 20))
            .Add([.. Year(2, 2024, 20).Select(j => j with { Outcome = "part_ordered", ClosedOn = null })])
            .Add(Year(3, 2024, 20))
            .Combine();
        Assert.Equal(["file-1.csv|20|20|0|0|0", "file-2.csv|20|0|0|20|0", "file-3.csv|20|20|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["40"], shop.Rows("from jobs select count(*)"));
    }

    [Fact]
    public void Combine_TechniciansWithBooksOfTheirOwn_AreToldApart()
    {
        using var shop = new TransformShop();
        shop.Add([.. new[] { "Bob", "Ann", "Cem" }.SelectMany((t, k) => Enumerable.Range(1, 30).Select(n =>
            new StagedJob($"{n}") { SourceOrder = 1, Technician = t, SerialKey = $"{t}{n}", OpenedOn = new DateOnly(2024, 1, 1).AddDays((3 * n) + k) }))]).Combine();
        Assert.Equal(["file-1.csv|90|90|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["Ann/7", "Bob/7", "Cem/7"], shop.Rows("from jobs select job_id where job_id like '%/7' order by 1"));
    }

    [Fact]
    public void Combine_TwoBooksOfOneYear_AreToldApartByFile()
    {
        using var shop = new TransformShop();
        shop.Add(Year(1, 2024, 30)).Add([.. Year(2, 2024, 30).Select(j => j with { SerialKey = "other" + j.SerialKey, OpenedOn = j.OpenedOn.AddDays(4) })]).Combine();
        Assert.Equal(["file-1/9", "file-2/9"], shop.Rows("from jobs select job_id where job_id like '%/9' order by 1"));
    }

    [Fact]
    public void Combine_VisitsNumberedForEachUnit_AreJobsOfTheirOwn()
    {
        using var shop = new TransformShop();
        shop.Add([.. Enumerable.Range(1, 12).SelectMany(unit => Enumerable.Range(1, 4).Select(n =>
            new StagedJob($"{n}") { SourceOrder = 1, SerialKey = $"S{unit}", OpenedOn = new DateOnly(2024, 1, 1).AddDays((unit * 9) + (n * 2)) }))]).Combine();
        Assert.Equal(["file-1.csv|48|48|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["48|48"], shop.Rows("from jobs select count(*), count(distinct job_id)"));
        Assert.Contains("each unit and day counts as a job of its own", JobKey.Read(shop.Database)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Combine_OneNumberTypedTwice_KeepsBothAndListsIt()
    {
        using var shop = new TransformShop();
        shop.Add(Year(1, 2024, 300)).Add(new StagedJob("7") { SourceOrder = 1, SerialKey = "another", OpenedOn = new(2024, 11, 30), ClosedOn = new(2024, 12, 1) }).Combine();
        Assert.Equal(["file-1.csv|301|301|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["7", "7~2"], shop.Rows("from jobs select job_id where job_id = '7' or job_id like '7~%' order by 1"));
        Assert.Equal(["number_of_several_jobs|7|302"], shop.Rows("from data_faults select fault_kind, subject, source_line"));
    }

    [Fact]
    public void Combine_RowsThatDifferInPartsOnly_AreOneJobWithAllParts()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { SourceOrder = 1, RowHash = "a" }, new StagedJob("J1") { SourceOrder = 1, RowHash = "b" })
            .Add(new StagedJobPart("J1", "P1") { SourceOrder = 1, SourceLine = 2 }, new StagedJobPart("J1", "P2") { SourceOrder = 1, SourceLine = 3 })
            .Combine();
        Assert.Equal(["file-1.csv|2|2|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["1|P1", "2|P2"], shop.Rows("from job_parts select line, part_raw order by 1"));
        Assert.Empty(shop.Rows("from data_faults"));
    }

    [Fact]
    public void Combine_RowsOfOneFileThatContradictEachOther_AreListedAndNoneIsReplaced()
    {
        using var shop = new TransformShop();
        shop.Add(
            new StagedJob("J1") { SourceOrder = 1, Outcome = "fixed_with_part" },
            new StagedJob("J1") { SourceOrder = 1, Outcome = "part_ordered", ClosedOn = null }).Combine();
        Assert.Equal(["file-1.csv|2|2|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["fixed_with_part"], shop.Rows("from jobs select outcome"));
        Assert.Equal(["job_told_differently|J1|Lines 2, 3 differ in outcome; line 2 speaks for the job."], shop.Rows("from data_faults select fault_kind, subject, message"));
    }

    [Fact]
    public void Combine_RowsOfOneFileThatSayWhenTheyChanged_TheNewerReplaces()
    {
        using var shop = new TransformShop();
        shop.Add(
            new StagedJob("J1") { SourceOrder = 1, UpdatedOn = new(2024, 5, 2) },
            new StagedJob("J1") { SourceOrder = 1, Outcome = "part_ordered", UpdatedOn = new(2024, 5, 1) }).Combine();
        Assert.Equal(["file-1.csv|2|1|0|1|0"], shop.Rows(FileBooks));
        Assert.Equal(["fixed_with_part"], shop.Rows("from jobs select outcome"));
    }

    [Fact]
    public void Combine_NewerExportCorrectsADay_IsTheSameJob()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { SourceOrder = 1, SerialKey = "S1" })
            .Add(new StagedJob("J1") { SourceOrder = 2, SerialKey = "S1", OpenedOn = new(2024, 3, 1) })
            .Combine();
        Assert.Equal(["file-1.csv|1|0|0|1|0", "file-2.csv|1|1|0|0|0"], shop.Rows(FileBooks));
        Assert.Null(JobKey.Read(shop.Database));
    }

    [Fact]
    public void Combine_PartLinesOfRepeatedNumbers_GoToTheJobOfTheirDayOrAreRefused()
    {
        using var shop = new TransformShop();
        shop.Add(Year(1, 2023, 20)).Add(Year(2, 2024, 20))
            .Add(
                new StagedJobPart("3", "P1") { SourceOrder = 3, WithJobRow = false, UpdatedOn = new(2023, 3, 1) },
                new StagedJobPart("3", "P2") { SourceOrder = 3, WithJobRow = false, UpdatedOn = new(2024, 3, 1) },
                new StagedJobPart("3", "P3") { SourceOrder = 3, WithJobRow = false })
            .Combine();
        Assert.Equal(["2023/3|P1", "2024/3|P2"], shop.Rows("from job_parts select job_id, part_raw order by 1"));
        Assert.Equal(
            ["file-3.csv|4|unknown_job|Several jobs bear the number 3, and the line does not say which it is for."],
            shop.Rows("from rejects select source_file, source_line, reason_code, message"));
    }

    [Fact]
    public void Combine_OrdersNumberedAnewEachYear_KeepEveryLine()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedOrder("1", "Haldor", "P1") { SourceOrder = 1, OrderedOn = new(2023, 2, 1) })
            .Add(new StagedOrder("1", "Haldor", "P1") { SourceOrder = 2, OrderedOn = new(2024, 2, 1) })
            .Combine();
        Assert.Equal(["file-1.csv|1|1|0|0|0", "file-2.csv|1|1|0|0|0"], shop.Rows(FileBooks));
    }

    // Further seeds, and the other ways in which the numbers begin anew, are in the long group.
    [Fact]
    public void Combine_RandomLogWithRepeatedNumbers_KeepsEveryJobThatWasWritten() => AssertEveryJobKept(4);

    [LongTheory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Combine_MoreRandomLogsWithRepeatedNumbers_KeepEveryJobThatWasWritten(int seed) => AssertEveryJobKept(seed);

    private static void AssertEveryJobKept(int seed)
    {
        var random = new Random(seed);
        string restart = new[] { "year", "technician", "unit", "file" }[seed % 4];
        int jobs = random.Next(60, 160), files = restart is "year" or "file" ? random.Next(2, 4) : 1;
        var next = new Dictionary<string, int>(StringComparer.Ordinal);
        var written = new List<StagedJob>();
        for (int i = 0; i < jobs; i++)
        {
            int file = 1 + (i * files / jobs);
            var job = new StagedJob("")
            {
                SourceOrder = restart == "year" ? file : random.Next(1, files + 1),
                OpenedOn = restart == "year" ? new DateOnly(2020 + file, 1, 1).AddDays(random.Next(360)) : new DateOnly(2024, 1, 1).AddDays(random.Next(360)),
                Technician = new[] { "Bob", "Ann", "Cem" }[random.Next(3)],
                SerialKey = random.Next(10) == 0 ? null : $"S{(restart == "unit" ? random.Next(20) : i)}",
                ModelRaw = $"QD {random.Next(40)}",
                ComplaintText = new[] { "not draining", "no heat", "noisy" }[random.Next(3)],
            };
            string book = restart switch
            {
                "year" => $"{job.OpenedOn.Year}",
                "technician" => job.Technician!,
                "unit" => $"{job.SerialKey ?? job.ModelRaw}",
                _ => $"{job.SourceOrder}",
            };
            int n = next[book] = next.GetValueOrDefault(book) + 1;
            written.Add(job with { JobId = $"{n}" });
        }

        using var shop = new TransformShop();
        foreach (IGrouping<int, StagedJob> file in written.GroupBy(j => j.SourceOrder))
        {
            // Each job has its row, and every third one a second row with another part.
            shop.Add([.. file.SelectMany((j, i) => i % 3 == 0 ? new[] { j with { RowHash = $"{j}a" }, j with { RowHash = $"{j}b" } } : [j])]);
        }

        shop.Combine();
        int distinct = written.DistinctBy(j => (j.JobId, j.SourceOrder, j.OpenedOn, j.SerialKey, j.ModelRaw, j.Technician)).Count();
        Assert.Equal(distinct, shop.Database.Count("jobs"));
        Assert.All(shop.Rows(FileBooks), b => Assert.EndsWith("|0|0|0", b, StringComparison.Ordinal));
    }

    private static StagedJob[] Year(int source, int year, int jobs) => [.. Enumerable.Range(1, jobs).Select(n => new StagedJob($"{n}")
    {
        SourceOrder = source, OpenedOn = new DateOnly(year, 1, 1).AddDays(n * 360 / jobs), ClosedOn = new DateOnly(year, 12, 31), SerialKey = $"{year}-{n}",
    })];
}
