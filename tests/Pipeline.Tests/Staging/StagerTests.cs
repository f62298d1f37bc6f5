using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class StagerTests
{
    private static readonly SourceMap Jobs = new()
    {
        Files = "jobs.csv",
        Kind = "jobs",
        Columns = new Dictionary<string, IReadOnlyList<string>>
        {
            ["job_id"] = ["Job"],
            ["opened_on"] = ["Opened"],
            ["complaint"] = ["Fault"],
        },
    };

    [Fact]
    public async Task StageAsync_PlainJobs_AllRowsStagedWithTheirLines()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\nJ1,2026-08-03,wont fill\nJ2,2026-08-04,\"leaks, from door\"\n", Jobs);
        Assert.Equal(2, file.RowsRead);
        Assert.Equal(0, file.Rejected);
        Assert.Equal(["J1|2026-08-03|wont fill|no_fill|2", "J2|2026-08-04|leaks, from door|leak|3"], StagingRig.Rows(file, "staged_jobs", "job_id, opened_on, complaint_text, complaint_kind, source_line"));
    }

    [Fact]
    public async Task StageAsync_QuoteNeverClosed_OneRejectNamesItsLine()
    {
        using var rig = new StagingRig();
        string rows = string.Concat(Enumerable.Range(1, 10).Select(i => i == 4 ? "\"J4\",\"2026-08-03\",\"leaks\n" : $"\"J{i}\",\"2026-08-03\",\"no, heat\"\n"));
        rows = rows.Replace("\"J4\",\"2026-08-03\",\"leaks", "\"J4\",2026-08-03,\"leaks", StringComparison.Ordinal);
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\n" + rows, Jobs);
        Assert.Equal(["5|-|open_quote"], StagingRig.Rejects(file));
        Assert.Equal(10, file.RowsRead);
        Assert.Equal(9, StagingRig.Rows(file, "staged_jobs", "job_id").Count);
    }

    [Fact]
    public async Task StageAsync_SameFileAgain_ComesFromTheCache()
    {
        using var rig = new StagingRig();
        StagedFile first = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\nJ1,2026-08-03,x\n,2026-08-04,y\n", Jobs);
        StagedFile again = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\nJ1,2026-08-03,x\n,2026-08-04,y\n", Jobs);
        Assert.False(first.FromCache);
        Assert.True(again.FromCache);
        Assert.Equal(first.Folder, again.Folder);
        Assert.Equal(["3|job_id|missing"], StagingRig.Rejects(again));
    }

    [Fact]
    public async Task StageAsync_DayOnlyInTheFirstRowOfEachDay_RowsBelowTakeIt()
    {
        using var rig = new StagingRig();
        string rows = string.Concat(Enumerable.Range(0, 12).Select(i => $"J{i},{(i % 4 == 0 ? $"2024-03-{i + 1:00}" : "")},leaks\n" + (i % 4 == 3 ? ",,Total: 4 calls\n" : "")));
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\n" + rows, Jobs);
        Assert.Equal(["J0|2024-03-01", "J3|2024-03-01", "J4|2024-03-05", "J11|2024-03-09"], StagingRig.Rows(file, "staged_jobs", "job_id, opened_on").Where(r => r.Split('|')[0] is "J0" or "J3" or "J4" or "J11"));
        Assert.Equal(12, StagingRig.Rows(file, "staged_jobs", "job_id").Count);
        Assert.Contains(CarriedDayVote.Remark, file.Remarks);
    }

    [Fact]
    public async Task StageAsync_FewDaysInNoOrder_RowsWithoutOneAreRefused()
    {
        using var rig = new StagingRig();
        string rows = string.Concat(Enumerable.Range(0, 12).Select(i => $"J{i},{(i % 4 == 0 ? $"2024-03-{(i * 7 % 11) + 1:00}" : "")},leaks\n"));
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\n" + rows, Jobs);
        Assert.Equal(9, file.Rejected);
        Assert.Empty(file.Remarks);
    }

    [Fact]
    public async Task StageAsync_DaysAsTheNumbersASpreadsheetCounts_ReadAsDays()
    {
        using var rig = new StagingRig();
        string rows = string.Concat(Enumerable.Range(1, 10).Select(i => i > 6 ? $"J{i},{45_490 + i},leaks\n" : $"J{i},7/{i + 10}/2024,leaks\n"));
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\n" + rows, Jobs);
        Assert.Equal(0, file.Rejected);
        Assert.Equal(["J6|2024-07-16", "J7|2024-07-24", "J8|2024-07-25"], StagingRig.Rows(file, "staged_jobs", "job_id, opened_on").Skip(5).Take(3));
    }

    [Fact]
    public async Task StageAsync_OneNumberAmongDates_Refused()
    {
        using var rig = new StagingRig();
        string rows = string.Concat(Enumerable.Range(1, 10).Select(i => i == 7 ? "J7,45497,leaks\n" : $"J{i},7/{i + 10}/2024,leaks\n"));
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault\n" + rows, Jobs);
        Assert.Equal(["8|opened_on|bad_date"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_WordsInPlaceOfTheClosingDay_TellTheStatus()
    {
        using var rig = new StagingRig();
        var map = Jobs with { Columns = new Dictionary<string, IReadOnlyList<string>>(Jobs.Columns) { ["closed_on"] = ["Done"] } };
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault,Done\nJ1,2026-08-03,leaks,2026-08-04\nJ2,2026-08-03,leaks,CXL\nJ3,2026-08-03,leaks,waiting part\nJ4,2026-08-03,leaks,  /  /  \nJ5,2026-08-03,leaks,soon\n", map);
        Assert.Equal(["J1|2026-08-04|-", "J2|-|canceled", "J3|-|waiting_for_part", "J4|-|-"], StagingRig.Rows(file, "staged_jobs", "job_id, closed_on, status"));
        Assert.Equal(["6|closed_on|bad_date"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_ComponentsOfAPriceListInWords_ReadByTheTablesOrKeepTheirOwnName()
    {
        using var rig = new StagingRig();
        var map = new SourceMap { Files = "parts.csv", Kind = "parts", Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["No"], ["component"] = ["Name"], ["price"] = ["Price"] } };
        StagedFile file = await rig.StageAsync("parts.csv", "No,Name,Price\nA1,PUMP DRAIN 30W,10.00\nA2,drain_pump,10.00\nA3,gizmo thing 12V,10.00\nA4,thermal_fuse,4.00\n", map);
        Assert.Equal(["A1|drain_pump", "A2|drain_pump", "A3|gizmo_thing", "A4|thermal_fuse"], StagingRig.Rows(file, "staged_parts", "part_raw, component"));
    }
}
