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

    private async Task Load(string source)
    {
        _shop.Write("shop.json", $$"""{ "sources": [ { {{source}}, "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "complaint": "Said" } } ] }""");
        await _shop.Load();
    }

    private void Write(params WorkbookSheet[] sheets)
    {
        using FileStream stream = File.Create(Path.Combine(_shop.Input, "log.xlsx"));
        WorkbookWriter.Write(stream, sheets);
    }

    private static WorkbookSheet Sheet(string name, int first, int rows) => new(name, Heads,
        [.. Enumerable.Range(first, rows).Select(i => (IReadOnlyList<WorkbookCell>)[Cell($"{i}"), Cell($"2025-03-{i:00}"), Cell("does not heat")])]);

    private static WorkbookCell Cell(string text) => new(text, CellKind.Text);
}
