using System.Globalization;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Components;

/// <summary>Draws a table on a page: a heading row that repeats on paper, rows that are never split, and a frame that scrolls on a narrow screen.</summary>
internal static class TableMarkup
{
    // Rows up to which a table stays on one printed page.
    private const int ShortTable = 15;

    public static Node Draw(TableView table, string currency)
    {
        if (table.Rows.Count == 0)
        {
            return Tag.Div(Tag.P(Tag.Strong(table.Title), ". ", table.WhenEmpty)).Class("missing").Id("table-" + table.Key);
        }

        string captionId = "caption-" + table.Key;
        Node caption = Tag.P(Tag.Strong(table.Title), " ", Tag.Span(table.Basis).Class("basis")).Class("caption").Id(captionId);
        var head = new Element("thead", new Element("tr", [.. table.Columns.Select(Head)]));
        var body = new Element("tbody", [.. table.Rows.Take(table.RowsOnPage).Select(r => Row(table, r, currency))]);
        Element grid = new Element("table", head, body).Id("table-" + table.Key).With("aria-labelledby", captionId);
        Element scroller = Tag.Div(grid).Class("scroll").With("role", "region").With("tabindex", "0").With("aria-labelledby", captionId);
        Node more = table.Rows.Count <= table.RowsOnPage ? Node.Empty
            : Tag.P($"{Format.Count(table.Rows.Count - table.RowsOnPage)} more rows are in the workbook.").Class("basis");
        return Tag.Div(caption, scroller, more).Class(table.Rows.Count <= ShortTable ? "sheet short" : "sheet");
    }

    private static Node Head(TableColumn column)
    {
        Element cell = new Element("th", column.Head).With("scope", "col");
        return column.Kind switch
        {
            CellKind.Text => cell,
            CellKind.Day or CellKind.Code => cell.Class("day"),
            _ => cell.Class("num"),
        };
    }

    private static Node Row(TableView table, IReadOnlyList<object?> cells, string currency)
    {
        Node Cell(TableColumn column, int i)
        {
            (object? value, CellKind kind) = cells[i] is Cell own ? (own.Value, own.Kind) : (cells[i], column.Kind);
            string text = Text(value, kind, currency);
            Element cell = i == 0 ? new Element("th", text).With("scope", "row") : new Element("td", text);
            bool words = kind == CellKind.Text || value is Estimate { Value: null };
            return words ? cell : cell.Class(kind is CellKind.Day or CellKind.Code ? "day" : "num");
        }

        return new Element("tr", [.. table.Columns.Select(Cell)]);
    }

    private static string Text(object? cell, CellKind kind, string currency) => cell switch
    {
        null => "\u2013",
        string text => text,
        Estimate estimate => kind == CellKind.Share ? Format.Share(estimate) : Format.Estimate(estimate),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        decimal money => MoneyFormat.Text(money, kind == CellKind.Money ? currency : ""),
        double share when kind == CellKind.Share => Format.Percent(share),
        double days when kind == CellKind.Days => Format.Tick(Math.Round(days, 1)),
        double number => Format.Number(number),
        int whole => Format.Count(whole),
        long whole => Format.Count(whole),
        _ => throw new ArgumentException($"A cell of type {cell.GetType().Name} cannot be shown.", nameof(cell)),
    };
}
