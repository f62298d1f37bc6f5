using System.Globalization;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Components;

/// <summary>Draws a table on a page: a heading row that repeats on paper, rows that are not split, a frame that scrolls where the screen is narrow.</summary>
internal static class TableMarkup
{
    // Rows up to which a table stays on one printed page.
    private const int ShortTable = 15;

    public static Node Draw(TableView sheet, string currency)
    {
        if (sheet.Rows.Count == 0)
        {
            return Tag.Div(Tag.P(Tag.Strong(sheet.Title), ". ", sheet.WhenEmpty)).Class("missing").Id("table-" + sheet.Key);
        }

        string captionId = "caption-" + sheet.Key;
        Node caption = Tag.P(Tag.Strong(sheet.Title), " ", Tag.Span(sheet.Basis).Class("basis")).Class("caption").Id(captionId);
        var head = new Element("thead", new Element("tr", [.. sheet.Columns.Select(Head)]));
        var body = new Element("tbody", [.. sheet.Rows.Take(sheet.RowsOnPage).Select(r => Row(sheet, r, currency))]);
        Element table = new Element("table", head, body).Id("table-" + sheet.Key).With("aria-labelledby", captionId);
        Element scroller = Tag.Div(table).Class("scroll").With("role", "region").With("tabindex", "0").With("aria-labelledby", captionId);
        Node more = sheet.Rows.Count <= sheet.RowsOnPage ? Node.Empty
            : Tag.P($"{Format.Count(sheet.Rows.Count - sheet.RowsOnPage)} more rows are in the workbook.").Class("basis");
        return Tag.Div(caption, scroller, more).Class(sheet.Rows.Count <= ShortTable ? "sheet short" : "sheet");
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

    private static Node Row(TableView sheet, IReadOnlyList<object?> cells, string currency)
    {
        Node Cell(TableColumn column, int i)
        {
            (object? value, CellKind kind) = cells[i] is Cell own ? (own.Value, own.Kind) : (cells[i], column.Kind);
            string text = Text(value, kind, currency);
            Element cell = i == 0 ? new Element("th", text).With("scope", "row") : new Element("td", text);
            bool words = kind == CellKind.Text || value is Estimate { Value: null };
            return words ? cell : cell.Class(kind is CellKind.Day or CellKind.Code ? "day" : "num");
        }

        return new Element("tr", [.. sheet.Columns.Select(Cell)]);
    }

    private static string Text(object? cell, CellKind kind, string currency) => cell switch
    {
        null => "\u2013",
        string text => text,
        Estimate estimate => kind == CellKind.Share ? Format.Share(estimate) : Format.Estimate(estimate),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        decimal money => Format.Money(money, kind == CellKind.Money ? currency : ""),
        double share when kind == CellKind.Share => Format.Percent(share),
        double number => Format.Number(number),
        int whole => Format.Count(whole),
        long whole => Format.Count(whole),
        _ => throw new ArgumentException($"A cell of type {cell.GetType().Name} cannot be shown.", nameof(cell)),
    };
}
