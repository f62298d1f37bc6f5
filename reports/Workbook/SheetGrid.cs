using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Workbook;

/// <summary>
/// A table as a spreadsheet holds it: one figure a cell. A column of estimates becomes the value, its two ends and the
/// reason where there is none.
/// </summary>
internal sealed record SheetGrid(IReadOnlyList<string> Heads, IReadOnlyList<IReadOnlyList<GridCell>> Rows)
{
    public static SheetGrid Of(TableView sheet)
    {
        bool[] wide = [.. sheet.Columns.Select((_, i) => sheet.Rows.Any(r => Bare(r[i]) is Estimate))];
        var heads = sheet.Columns.SelectMany((c, i) => wide[i] ? [c.Head, "from", "to", "why not"] : new[] { c.Head });
        return new SheetGrid([.. heads], [.. sheet.Rows.Select(r => Row(sheet, r, wide))]);
    }

    private static IReadOnlyList<GridCell> Row(TableView sheet, IReadOnlyList<object?> cells, bool[] wide)
    {
        var row = new List<GridCell>();
        for (int i = 0; i < cells.Count; i++)
        {
            CellKind kind = cells[i] is Cell own ? own.Kind : sheet.Columns[i].Kind;
            object? value = Bare(cells[i]);
            if (value is Estimate estimate)
            {
                row.AddRange([new(estimate.Value, kind), new(estimate.Lower, kind), new(estimate.Upper, kind), new(estimate.Missing, CellKind.Text)]);
            }
            else
            {
                row.Add(new GridCell(value, kind));
                row.AddRange(wide[i] ? Enumerable.Repeat(new GridCell(null, CellKind.Text), 3) : []);
            }
        }

        return row;
    }

    private static object? Bare(object? cell) => cell is Cell own ? own.Value : cell;
}

/// <summary>One figure or text, and how a spreadsheet shows it.</summary>
internal sealed record GridCell(object? Value, CellKind Kind);
