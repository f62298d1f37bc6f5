using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>One month on the list of months.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Calls">Calls taken.</param>
/// <param name="FirstVisitShare">Share finished at the first visit.</param>
public sealed record IndexedMonth(DateOnly Month, long Calls, Estimate FirstVisitShare)
{
    /// <summary>True if its report stands beside the list.</summary>
    public bool Written { get; init; }
}

/// <summary>The page that lists all months.</summary>
public static class MonthIndex
{
    /// <summary>All months from the first call to the last day of the data, oldest first; empty if they were not counted.</summary>
    public static IReadOnlyList<IndexedMonth> Read(Database database) =>
        database.Has("month_figures") ? [.. database.ReadTable<MonthCalls>("month_figures").OrderBy(m => m.Month).Select(m => new IndexedMonth(m.Month, m.Calls, m.FirstVisitShare))] : [];

    /// <summary>The document's text, newest month first.</summary>
    public static string Render(string shop, DateOnly asOf, IReadOnlyList<IndexedMonth> months)
    {
        var head = new Element("thead", new Element("tr", [.. new[] { "Month", "Calls", "Finished at first visit", "Report" }.Select(h => new Element("th", h).With("scope", "col"))]));
        var body = new Element("tbody", [.. months.OrderByDescending(m => m.Month).Select(Row)]);
        Node list = months.Count == 0
            ? Tag.Div(Tag.P("No month has a call yet.")).Class("missing")
            : Tag.Div(new Element("table", head, body).With("aria-labelledby", "caption-months"))
                .Class("scroll").With("role", "region").With("tabindex", "0").With("aria-labelledby", "caption-months");
        var header = new Element("header", Tag.P(shop).Class("kicker"), new Element("h1", "Failure reports by month"), Tag.P($"As known on {Format.Day(asOf)}.").Class("basis")).Class("top");
        return Page.Render("Failure reports by month", Node.Group(header, new Element("main", Tag.P("All months with calls, newest first.").Class("caption").Id("caption-months"), list)));
    }

    private sealed record MonthCalls(DateOnly Month, long Calls, Estimate FirstVisitShare);

    private static Element Row(IndexedMonth month)
    {
        string folder = month.Month.ToString("yyyy-MM", CultureInfo.InvariantCulture);
        return new Element("tr",
            new Element("th", month.Written ? Tag.Link($"{folder}/index.html", Format.Month(month.Month)) : Format.Month(month.Month)).With("scope", "row"),
            new Element("td", Format.Count(month.Calls)).Class("num"),
            new Element("td", Format.Share(month.FirstVisitShare)),
            new Element("td", month.Written ? "" : $"partssignal report --month {folder}"));
    }
}
