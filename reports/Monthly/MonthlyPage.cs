using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Draws a monthly report as one self-contained document.</summary>
internal static class MonthlyPage
{
    /// <summary>The document's text.</summary>
    public static string Render(MonthlyReport report)
    {
        string title = $"Failure report, {Format.Month(report.Month)}";
        Node header = new Element("header",
            Tag.P(report.Shop).Class("kicker"),
            new Element("h1", title),
            Tag.P($"Calls of {Format.Month(report.Month)}, by what was known on {Format.Day(report.AsOf)}. Intervals are 95 % intervals.").Class("basis"),
            Contents(report)).Class("top");
        Node main = new Element("main", [.. report.Sections.Select(s => s.Draw(report.Currency))]);
        Node footer = new Element("footer",
            Tag.Div(Tag.P(Tag.Strong("Caution. "), Safety.Caution)).Class("caution"),
            Tag.P("The tables of this page are in ", Tag.Link("tables.xlsx", "tables.xlsx"), ", the sentences in ", Tag.Link("summary.txt", "summary.txt"),
                "; other months are on the ", Tag.Link("../index.html", "list of months"), ". Customers' names and addresses are not in this report."));
        return Page.Render(title, Node.Group(header, main, footer), StyleSheet.Report);
    }

    private static Element Contents(MonthlyReport report) =>
        new Element("nav", Tag.List(report.Sections.Select(s => (Node)Tag.Link("#" + s.Anchor, s.Heading)))).With("aria-label", "Sections");
}
