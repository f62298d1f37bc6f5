using System.Globalization;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Pages;

namespace PartsSignal.Reports.Tables;

/// <summary>Draws a table on a page: a heading row that repeats on paper, rows that are not split, a frame that scrolls where the screen is narrow.</summary>
internal static class SheetMarkup
{
    public static Node Draw(Sheet sheet, string currency)
    {
        if (sheet.Rows.Count == 0)
        {
            return Tag.Div(Tag.P(Tag.Strong(sheet.Title), ". ", sheet.WhenEmpty)).Class("missing").Id("table-" + sheet.Key);
        }

        string captionId = "caption-" + sheet.Key;
        var caption = new Element("caption", Tag.Strong(sheet.Title), " ", Tag.Span(sheet.Basis).Class("basis")).Id(captionId);
        var head = new Element("thead", new Element("tr", [.. sheet.Columns.Select(Head)]));
        var body = new Element("tbody", [.. sheet.Rows.Select(r => Row(sheet, r, currency))]);
        return Tag.Div(new Element("table", caption, head, body).Id("table-" + sheet.Key))
            .Class("scroll").With("role", "region").With("tabindex", "0").With("aria-labelledby", captionId);
    }

    private static Node Head(SheetColumn column)
    {
        Element cell = new Element("th", column.Head).With("scope", "col");
        return column.Kind is CellKind.Text or CellKind.Day ? cell : cell.Class("num");
    }

    private static Node Row(Sheet sheet, IReadOnlyList<object?> cells, string currency)
    {
        Node Cell(SheetColumn column, int i)
        {
            string text = Text(cells[i], column.Kind, currency);
            Element cell = i == 0 ? new Element("th", text).With("scope", "row") : new Element("td", text);
            bool words = column.Kind is CellKind.Text or CellKind.Day || cells[i] is Estimate { Value: null };
            return words ? cell : cell.Class("num");
        }

        return new Element("tr", [.. sheet.Columns.Select(Cell)]);
    }

    private static string Text(object? cell, CellKind kind, string currency) => cell switch
    {
        null => "\u2013",
        string text => text,
        Estimate estimate => kind == CellKind.Share ? Shown.Share(estimate) : Shown.Estimate(estimate),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        decimal money => Shown.Money(money, kind == CellKind.Money ? currency : ""),
        double share when kind == CellKind.Share => Shown.Percent(share),
        double number => Shown.Number(number),
        int whole => Shown.Count(whole),
        long whole => Shown.Count(whole),
        _ => throw new ArgumentException($"A cell of type {cell.GetType().Name} cannot be shown.", nameof(cell)),
    };
}
