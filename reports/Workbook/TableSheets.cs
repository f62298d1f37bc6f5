using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Workbook;

/// <summary>The tables of a report as sheets, a list of them first. A column of estimates becomes the value, its two ends, and why there is none.</summary>
internal static class TableSheets
{
    private const string ContentsName = "Contents";

    public static IReadOnlyList<WorkbookSheet> From(IReadOnlyList<TableView> tables)
    {
        IReadOnlyList<string> names = SheetNames.Unique([ContentsName, .. tables.Select(t => SheetNames.Short(t.Title))]);
        var contents = new WorkbookSheet(ContentsName, ["Sheet", "Table", "Basis"],
            [.. tables.Select((t, i) => (IReadOnlyList<WorkbookCell>)[Text(names[i + 1]), Text(t.Title), Text(t.Rows.Count == 0 ? t.WhenEmpty : t.Basis)])]);
        return [contents, .. tables.Select((t, i) => From(t, names[i + 1]))];
    }

    private static WorkbookSheet From(TableView table, string name)
    {
        bool[] wide = [.. table.Columns.Select((_, i) => table.Rows.Any(r => Bare(r[i]) is Estimate))];
        var heads = table.Columns.SelectMany((c, i) => wide[i] ? [c.Head, "from", "to", "why not"] : new[] { c.Head });
        return new WorkbookSheet(name, [.. heads], [.. table.Rows.Select(r => Row(table, r, wide))]);
    }

    private static IReadOnlyList<WorkbookCell> Row(TableView table, IReadOnlyList<object?> cells, bool[] wide) => [.. cells.SelectMany((cell, i) =>
    {
        CellKind kind = cell is Cell own ? own.Kind : table.Columns[i].Kind;
        return Bare(cell) is Estimate estimate
            ? [new(estimate.Value, kind), new(estimate.Lower, kind), new(estimate.Upper, kind), Text(estimate.Missing)]
            : wide[i] ? [new(Bare(cell), kind), Text(null), Text(null), Text(null)]
            : new WorkbookCell[] { new(Bare(cell), kind) };
    })];

    private static WorkbookCell Text(string? text) => new(text, CellKind.Text);

    private static object? Bare(object? cell) => cell is Cell own ? own.Value : cell;
}
