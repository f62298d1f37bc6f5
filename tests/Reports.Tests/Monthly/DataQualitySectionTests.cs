using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class DataQualitySectionTests
{
    [Fact]
    public void Read_EmptyStore_SaysThatNoFileWasRead()
    {
        using Database database = SectionCase.Session();
        DataQualityFacts facts = DataQualitySection.Read(database);
        Assert.Empty(facts.Gaps);
        Assert.Contains("No file was read.", SectionCase.Text(DataQualitySection.Build(facts)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Store_GivesFilesReasonsFaultsAndGaps()
    {
        DataQualityFacts facts = Filled();
        Assert.Equal(["jobs-2023.csv", "orders.csv"], facts.Files.Select(f => f.SourceFile));
        Assert.Equal(new RejectReason("date_unreadable", "opened_on", 2, "jobs-2023.csv, line 1,077", "Write days as 2024-02-29."), facts.Reasons[0]);
        Assert.Equal(new FaultKind("supersession_cycle", 1, "PX-1 to PX-2 to PX-1"), Assert.Single(facts.Faults));
        Assert.Contains(facts.Gaps, g => g is { What: "the age of the appliance", Jobs: 1, Of: 2, BroughtBack: 1 });
    }

    [Fact]
    public void Build_RejectsAndGaps_NameTheFirstThingToFix()
    {
        Section section = DataQualitySection.Build(Filled());
        Assert.Contains("3 of 60 rows could not be read; most often: date unreadable (2 rows). Fill in first: ", SectionCase.Text(section), StringComparison.Ordinal);
        Assert.Equal(["orders.csv", "orders of parts from suppliers", 20L, 19L, 0L, 0L, 1L], SectionCase.Table(section, "files").Rows[1]);
    }

    [Fact]
    public void Build_NothingWrong_SaysSoOfEachTable()
    {
        string text = SectionCase.Text(DataQualitySection.Build(new DataQualityFacts([new FileBooks("jobs.csv", "jobs", 40, 40, 0, 0, 0)], [], [], [])));
        Assert.Contains("All 40 rows could be read.", text, StringComparison.Ordinal);
        Assert.Contains("Nothing that the answers use is missing.", text, StringComparison.Ordinal);
        Assert.Contains("Every row could be read.", text, StringComparison.Ordinal);
        Assert.Contains("The files do not contradict each other.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_FileReadOnceForEachVan_IsOneLine()
    {
        using Database database = SectionCase.Session();
        database.Execute("insert into loads (source_file, kind, rows_read, loaded, duplicate, replaced, rejected) values ('stock.csv', 'van_counts', 18, 17, 1, 0, 0), ('stock.csv', 'van_counts', 18, 16, 0, 1, 1)");
        Assert.Equal(new FileBooks("stock.csv", "van_counts", 36, 33, 1, 1, 1), Assert.Single(DataQualitySection.Read(database).Files));
    }

    [Fact]
    public void Build_LearnedDateCodes_SaysWhichBrandsAndHowManyJobs()
    {
        using Database database = SectionCase.Session();
        database.Execute("insert into loads (source_file, kind, rows_read, loaded, duplicate, replaced, rejected) values ('jobs.csv', 'jobs', 40, 40, 0, 0, 0)");
        database.Execute("""
            insert into date_codes (brand, serial_form, date_code, rule, in_use, basis, confirming, contradicting, jobs_aged, pattern)
            values ('Orvane', '9999999', 'a', 'a', true, 'proven', 1200, 0, 30, 'a'), ('Orvane', '99999999', 'a', 'a', true, 'approved', 34, 1, 30, 'a'), ('Tessel', '99999', 'a', 'a', false, 'asked', 9, 0, 0, 'a'), ('Tessel', '999999', 'a', 'a', false, 'rejected', 9, 0, 0, 'a')
            """);
        string text = SectionCase.Text(DataQualitySection.Build(DataQualitySection.Read(database)));
        Assert.Contains("Serial numbers of Orvane tell the build date. The program learned how from 1,234 appliances whose dates are in your files; 30 jobs have their age from it. For Tessel a rule is likely but not certain: answer review-date-codes.csv.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_DateCodesOfABrandWrittenInTwoWays_CountsItsJobsOnce()
    {
        using Database database = SectionCase.Session();
        database.Execute("insert into loads (source_file, kind, rows_read, loaded, duplicate, replaced, rejected) values ('jobs.csv', 'jobs', 40, 40, 0, 0, 0)");
        database.Execute("""
            insert into date_codes (brand, serial_form, date_code, rule, in_use, basis, confirming, contradicting, jobs_aged, pattern)
            values ('Orvane', '9999999', 'a', 'a', true, 'proven', 1200, 0, 30, 'a'), ('ORVANE', '99999999', 'a', 'a', true, 'proven', 34, 0, 30, 'a')
            """);
        string text = SectionCase.Text(DataQualitySection.Build(DataQualitySection.Read(database)));
        Assert.Contains("Serial numbers of Orvane tell the build date.", text, StringComparison.Ordinal);
        Assert.Contains("30 jobs have their age from it.", text, StringComparison.Ordinal);
    }

    private static DataQualityFacts Filled()
    {
        using Database database = SectionCase.Session();
        database.Execute("insert into loads (source_file, kind, rows_read, loaded, duplicate, replaced, rejected) values ('orders.csv', 'part_orders', 20, 19, 0, 0, 1), ('jobs-2023.csv', 'jobs', 40, 30, 5, 3, 2)");
        database.Execute("""
            insert into rejects (source_file, source_line, field, reason_code, message, suggestion)
            values ('jobs-2023.csv', 1077, 'opened_on', 'date_unreadable', 'no day', 'Write days as 2024-02-29.'), ('jobs-2023.csv', 1090, 'opened_on', 'date_unreadable', 'no day', null), ('orders.csv', 3, null, 'empty_row', 'nothing in it', null)
            """);
        database.Execute("insert into data_faults (fault_kind, subject, message) values ('supersession_cycle', 'PX-1', 'PX-1 to PX-2 to PX-1')");
        database.Execute("insert into jobs (job_id, age_years, complaint_kind, closed_on, closing_basis, outcome, main_component) values ('J1', 4.5, 'no_fill', '2024-05-02', 'closing day', 'fixed_without_part', 'none'), ('J2', null, 'no_fill', '2024-05-03', 'closing day', 'fixed_without_part', 'none')");
        return DataQualitySection.Read(database);
    }
}
