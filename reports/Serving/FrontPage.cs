using PartsSignal.Analysis.PartPrediction.Answers;
using PartsSignal.Reports.Pages;

namespace PartsSignal.Reports.Serving;

/// <summary>The server's first page: a question to the live predictor, its answer, and the way to the reports.</summary>
public static class FrontPage
{
    /// <summary>The document's text.</summary>
    /// <param name="shop">Name of the shop.</param>
    /// <param name="model">Model as asked; empty: not asked.</param>
    /// <param name="complaint">Complaint as asked; empty: not asked.</param>
    /// <param name="answer">The answer; null: nothing was asked.</param>
    public static string Render(string shop, string model, string complaint, Answer? answer)
    {
        var header = new Element("header", Tag.P(shop).Class("kicker"), new Element("h1", "What will it need?"));
        Node form = new Element("form",
            Field("model", "Model number or family", model),
            Field("complaint", "Complaint", complaint),
            new Element("button", "Answer").With("type", "submit")).With("method", "get").With("action", "answer").With("autocomplete", "off");
        Node links = new Element("nav", Tag.List(
        [
            Tag.Link("reports/index.html", "Monthly failure reports"),
            Tag.Link("lookup.html", "Phone page, to keep on a phone"),
            Tag.Link("openapi.json", "Description of the programs' interface"),
        ])).With("aria-label", "Pages");
        return Page.Render("What will it need?", Node.Group(header, new Element("main", form, answer is null ? Node.Empty : Shown(answer), links)), "lookup.css", form: true);
    }

    private static Node Field(string id, string label, string value) => Node.Group(
        new Element("label", label).With("for", id),
        new Element("input").Id(id).With("name", id).With("type", "text").With("maxlength", "200").With("value", value));

    private static Element Shown(Answer answer) => new Element("section",
        new Element("h2", "Answer").Id("answer-heading"),
        Node.Group(answer.Cautions.Select(c => (Node)Tag.P(c).Class("caution"))),
        Node.Group(answer.Notes.Select(n => (Node)Tag.P(n).Class("basis"))),
        Tag.P($"{Pages.Shown.Count(answer.Evidence.Jobs)} similar closed jobs ({answer.Evidence.Source}).").Class("basis"),
        Node.Group(answer.Needs.Select(Need)),
        answer.Checks is { } plan ? Node.Group(Tag.H3("Check in this order"), Tag.Numbered(plan.Steps.Select(s => (Node)$"{s.Check.What} ({Pages.Shown.Tick(s.Check.Minutes)} min)"))) : Node.Empty)
        .With("aria-labelledby", "answer-heading");

    private static Node Need(LikelyNeed need) => Tag.Div(
        Tag.P(Tag.Span(Pages.Shown.Percent(need.Odds)).Class("odds"), $" {Pages.Shown.Words(need.Need)}, {need.Word}{(need.Bring ? ", bring it" : "")}"),
        Node.Group(need.Parts.Select(p => (Node)Tag.P(
            Tag.Span(p.Part.PartNumber).Class("number"),
            $" {p.Part.Description}; {(p.Vans.Count == 0 ? "on no van" : string.Join(", ", p.Vans.Select(v => $"van {v.Van} has {v.OnHand}")))}").Class("part")))).Class("need");
}
