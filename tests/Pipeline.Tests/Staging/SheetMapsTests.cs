using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Tests.Transform;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Workbook;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>A map that names no sheet reads every shown sheet with its columns.</summary>
public sealed class SheetMapsTests : IDisposable
{
    private static readonly string[] Heads = ["Job", "Opened", "Said"];
    private readonly SmallShop _shop = new();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_MapWithoutSheet_ReadsEverySheetWithItsColumns()
    {
        Write(Sheet("2024", 1, 3), new WorkbookSheet("Notes", ["About"], [[Cell("kept by the office")]]), Sheet("2025", 4, 2), Sheet("Old", 6, 1) with { IsHidden = true });
        await Load("\"files\": \"log.xlsx\"");
        Assert.Equal(["1", "2", "3", "4", "5"], _shop.Rows("from jobs select job_id order by job_id"));
        Assert.Equal(["3|3", "2|2"], _shop.Rows("from loads select rows_read, loaded order by rows_read desc"));
    }

    [Fact]
    public async Task Load_MapWithASheet_ReadsThatSheetAlone()
    {
        Write(Sheet("2024", 1, 3), Sheet("2025", 4, 2));
        await Load("\"files\": \"log.xlsx\", \"sheet\": \"2025\"");
        Assert.Equal(["4", "5"], _shop.Rows("from jobs select job_id order by job_id"));
    }

    [Fact]
    public async Task Load_AWorkbookOfThePatternCannotBeRead_TheOthersAreReadSheetBySheet()
    {
        Write(Sheet("2024", 1, 3), Sheet("2025", 4, 2));
        _shop.Write("a.xlsx", "no workbook at all");
        LoadReport report = await Load("\"files\": \"*.xlsx\"");
        Assert.StartsWith("a.xlsx: ", Assert.Single(report.FileErrors), StringComparison.Ordinal);
        Assert.Equal(["1", "2", "3", "4", "5"], _shop.Rows("from jobs select job_id order by job_id"));
    }

    [Fact]
    public async Task Load_WorkbookIsOpenInASpreadsheet_ItsLockFileIsIgnored()
    {
        Write(Sheet("2024", 1, 3), Sheet("2025", 4, 2));
        _shop.Write("~$log.xlsx", "a user's name");
        LoadReport report = await Load("\"files\": \"*.xlsx\"");
        Assert.Empty(report.FileErrors);
        Assert.Equal(["log.xlsx|3", "log.xlsx|2"], _shop.Rows("from loads select source_file, loaded order by 2 desc"));
    }

    [Fact]
    public async Task Load_SheetLacksAColumnItCanDoWithout_IsReadWithoutItAndSaid()
    {
        Write(Sheet("2025", 4, 2, "Ann"), Sheet("2024", 1, 3));
        LoadReport report = await Load("\"files\": \"log.xlsx\"", ", \"technician\": \"Who\"");
        Assert.Equal(["1|-", "2|-", "3|-", "4|Ann", "5|Ann"], _shop.Rows("from jobs select job_id, technician order by job_id"));
        Assert.Equal("log.xlsx, sheet 2024, has no column 'Who' and was read without it.", Assert.Single(report.Assumptions, a => a.Contains("sheet", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Load_SheetLacksANeededColumn_IsNamedAsNotReadAndABlankOneIsNot()
    {
        Write(Sheet("2024", 1, 3), Sheet("2025", 4, 2), new WorkbookSheet("Calls", ["Job", "Said"], [[Cell("9"), Cell("does not heat")]]), new WorkbookSheet("Sheet4", [], []));
        LoadReport report = await Load("\"files\": \"log.xlsx\"");
        Assert.Equal(5, report.Rows.Total.Read);
        Assert.Equal(
            "Not read, since it lacks columns of its map: log.xlsx, sheet Calls. If it holds data of yours, give it a map of its own in shop.json.",
            Assert.Single(report.Assumptions, a => a.Contains("sheet", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Load_SheetHasFewOfTheColumns_IsAnotherTableAndNotRead()
    {
        Write(Sheet("2024", 1, 3, "Ann", "Pump", "P100", "12"), Sheet("2025", 4, 2, "Ann", "Pump", "P100", "12"), Sheet("Open", 1, 2));
        LoadReport report = await Load("\"files\": \"log.xlsx\"", ", \"technician\": \"Who\", \"description\": \"Fitted\", \"part\": \"Part\", \"price\": \"Price\"");
        Assert.Equal(["3", "2"], _shop.Rows("from loads select rows_read order by 1 desc"));
        Assert.Contains(report.Assumptions, a => a.Contains("sheet Open", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_OneLaterSheetHasTheColumns_ThatSheetIsRead()
    {
        Write(new WorkbookSheet("Notes", ["About"], [[Cell("kept by the office")]]), Sheet("Log", 1, 3));
        LoadReport report = await Load("\"files\": \"log.xlsx\"");
        Assert.Equal(["1", "2", "3"], _shop.Rows("from jobs select job_id order by job_id"));
        Assert.Contains(report.Assumptions, a => a.Contains("log.xlsx, sheet Notes", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_NoSheetHasAColumnOfTheMap_IsRefusedAsAnyOtherFileIs()
    {
        Write(new WorkbookSheet("Notes", ["About"], [[Cell("kept by the office")]]), Sheet("2024", 1, 3), Sheet("2025", 4, 2));
        BadInputException fault = await Assert.ThrowsAsync<BadInputException>(() => Load("\"files\": \"log.xlsx\"", ", \"technician\": \"Wo\""));
        Assert.StartsWith("log.xlsx: has no column 'Wo'. Its header reads: Job, Opened, Said.", Assert.Single(fault.Faults), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Load_SheetHasAMapOfItsOwn_IsReadOnce()
    {
        Write(Sheet("2024", 1, 3), Sheet("2025", 4, 2));
        const string Columns = "\"kind\": \"jobs\", \"columns\": { \"job_id\": \"Job\", \"opened_on\": \"Opened\", \"complaint\": \"Said\" }";
        _shop.Write("shop.json", $$"""{ "sources": [ { "files": "log.xlsx", {{Columns}} }, { "files": "log.xlsx", "sheet": "2025", {{Columns}} } ] }""");
        await _shop.Load();
        Assert.Equal(["3|3", "2|2"], _shop.Rows("from loads select rows_read, loaded order by 1 desc"));
    }

    [Fact]
    public async Task Load_FileWasMendedWhenOneSheetWasRead_IsLoadedStill()
    {
        Write(Bad("2024", 1), Bad("2025", 4));
        LoadReport first = await Load("\"files\": \"log.xlsx\", \"sheet\": \"2024\"");
        Mend(first.Staged[0].RawRejects!, "2025-13-02", "2025-03-02");
        LoadReport all = await Load("\"files\": \"log.xlsx\"");
        Assert.Equal(["1", "2", "4"], _shop.Rows("from jobs select job_id order by job_id"));
        Assert.Equal(["log.xlsx.rejects.csv", "log.xlsx.jobs.rejects.csv"], all.Staged.Where(s => s.RawRejects is not null).Select(s => Path.GetFileName(s.RawRejects)));
    }

    [Fact]
    public async Task Load_RowOfOneSheetIsMended_TheSameLineOfTheOtherStaysRefused()
    {
        Write(Bad("2024", 1), Bad("2025", 4));
        LoadReport first = await Load("\"files\": \"log.xlsx\"");
        Mend(first.Staged[0].RawRejects!, "2025-13-02", "2025-03-02");
        LoadReport report = await Load("\"files\": \"log.xlsx\"");
        Assert.Equal([(2, 1, 1, 0), (1, 1, 0, 0), (2, 1, 0, 1)], report.Files.Select(f => ((int)f.Rows.Read, (int)f.Rows.Loaded, (int)f.Rows.Replaced, (int)f.Rows.Rejected)));
        Assert.Equal(["log.xlsx|3"], _shop.Rows("from rejects select source_file, source_line"));
    }

    [Fact]
    public async Task Load_MendedFileKeepsATotal_RefusedRowsAreNeverFewerThanNone()
    {
        WorkbookSheet total = Bad("2024", 1) with { Rows = [.. Bad("2024", 1).Rows, [Cell("Total"), Cell(""), Cell("")]] };
        Write(total, new WorkbookSheet("2025", Heads, [Row(4, "2025-03-04"), Row(5, "2025-03-05"), Row(6, "2025-13-06")]));
        LoadReport first = await Load("\"files\": \"log.xlsx\"");
        Assert.Equal(1, first.Staged[0].NotData);
        Mend(first.Staged[0].RawRejects!, "2025-13-02", "2025-03-02");
        LoadReport report = await Load("\"files\": \"log.xlsx\"");
        Assert.Equal([0, 0, 1], report.Files.Select(f => (int)f.Rows.Rejected));
        Assert.Equal([1, 0, 0], report.Files.Select(f => (int)f.Rows.Replaced));
    }

    private async Task<LoadReport> Load(string source, string moreColumns = "")
    {
        _shop.Write("shop.json", $$"""{ "sources": [ { {{source}}, "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "complaint": "Said"{{moreColumns}} } } ] }""");
        return await _shop.Load();
    }

    private void Mend(string rejects, string wrong, string right) =>
        _shop.Write($"mended/{Path.GetFileName(rejects)}", MendedText(File.ReadAllText(rejects), wrong, right));

    // The last column keeps the row as it was typed.
    private static string MendedText(string rejects, string wrong, string right)
    {
        int at = rejects.IndexOf(wrong, StringComparison.Ordinal);
        return rejects[..at] + right + rejects[(at + wrong.Length)..];
    }

    private void Write(params WorkbookSheet[] sheets)
    {
        using FileStream stream = File.Create(Path.Combine(_shop.Input, "log.xlsx"));
        WorkbookWriter.Write(stream, sheets);
    }

    private static WorkbookSheet Sheet(string name, int first, int rows, params string[] more) => new(
        name,
        [.. Heads, .. new[] { "Who", "Fitted", "Part", "Price" }.Take(more.Length)],
        [.. Enumerable.Range(first, rows).Select(i => (IReadOnlyList<WorkbookCell>)[.. Row(i, $"2025-03-{i:00}"), .. more.Select(Cell)])]);

    // A good row, and one whose day is none.
    private static WorkbookSheet Bad(string name, int first) => new(name, Heads, [Row(first, $"2025-03-{first:00}"), Row(first + 1, $"2025-13-{first + 1:00}")]);

    private static WorkbookCell[] Row(int job, string day) => [Cell($"{job}"), Cell(day), Cell("does not heat")];

    private static WorkbookCell Cell(string text) => new(text, CellKind.Text);
}
