using System.Globalization;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Phone;

/// <summary>What was asked, as typed; empty texts: not told.</summary>
public sealed record AskedQuestion(string Model, string Complaint, string Type, double? Age);

/// <summary>The server's first page: a question to the live predictor, its answer, and the way to the reports.</summary>
public static class FrontPage
{
    /// <summary>The document's text.</summary>
    /// <param name="shop">Name of the shop.</param>
    /// <param name="dataUpTo">Last day covered by the data, or null if not known.</param>
    /// <param name="asked">What was asked, to be shown again.</param>
    /// <param name="answer">The answer, or null if nothing was asked.</param>
    /// <param name="forPrograms">True if the server also answers programs; false on the bench, to whose results a link then leads back.</param>
    /// <param name="ownTypes">Appliance types of the shop's own, or null for none.</param>
    /// <param name="old">What to tell when the data ends long ago, or null.</param>
    /// <param name="faults">Why the question could not be answered, or null if it could.</param>
    public static string Render(string shop, DateOnly? dataUpTo, AskedQuestion asked, Answer? answer, bool forPrograms = true, IReadOnlyList<string>? faults = null, IReadOnlyList<string>? ownTypes = null, string? old = null)
    {
        // Only the bench has other pages to go back to; it answers no programs.
        var header = new Element("header", forPrograms ? Node.Empty : Tag.P(Tag.Link("results", "Back to the results")), Tag.P(shop).Class("kicker"), new Element("h1", "What will it need?"),
            dataUpTo is { } day ? Tag.P($"Data up to {Format.Day(day)}.").Class("basis") : Node.Empty,
            old is null ? Node.Empty : Tag.P(old).Class("stale").With("role", "status"));
        Node form = new Element("form",
            Field("model", "Model number or family", asked.Model),
            Types(asked.Type, ownTypes ?? []),
            Field("complaint", "Complaint", asked.Complaint),
            Field("age", "Age in years, if known", asked.Age?.ToString(CultureInfo.InvariantCulture) ?? ""),
            new Element("button", "Answer").With("type", "submit")).With("method", "get").With("action", "answer").With("autocomplete", "off");
        Node links = new Element("nav", Tag.List(
        [
            Tag.Link("reports/index.html", "Monthly failure reports"),
            Tag.Link("lookup.html", "Phone page, to keep on a phone"),
            .. forPrograms ? new[] { Tag.Link("openapi.json", "API description") } : [],
        ])).With("aria-label", "Pages");
        return Page.Render("What will it need?", Node.Group(header, new Element("main", Node.Group((faults ?? []).Select(f => (Node)Tag.P(f).Class("caution"))), answer is null ? form : Node.Group(AnswerSection(answer), Folded(form)), links)), "lookup.css", form: true);
    }

    // Below its answer the question waits folded, with what was asked.
    private static Element Folded(Node form) => new("details", new Element("summary", "Ask again, or about another call"), form);

    private static Node Field(string id, string label, string value) => Node.Group(
        new Element("label", label).With("for", id),
        new Element("input").Id(id).With("name", id).With("type", "text").With("maxlength", "200").With("value", value));

    private static Node Types(string asked, IReadOnlyList<string> own)
    {
        string[] types = ["", .. ApplianceType.Named.Union(own.Where(t => t != ApplianceType.Other), StringComparer.Ordinal)];
        return Node.Group(
            new Element("label", "Appliance, if the model is not known").With("for", "type"),
            new Element("select", [.. types.Select(t => (Node)Chosen(new Element("option", t.Length == 0 ? "not sure" : Format.Words(t)).With("value", t), t == asked))]).Id("type").With("name", "type"));
    }

    private static Element Chosen(Element option, bool chosen) => chosen ? option.With("selected", "") : option;

    private static Element AnswerSection(Answer answer) => new Element("section",
        new Element("h2", "Answer").Id("answer-heading"),
        Node.Group(answer.Notes.Select(n => (Node)Tag.P(n).Class("basis"))),
        Tag.P(answer.Evidence.Sentence()).Class("basis"),
        Node.Group(answer.Needs.Select(Need)),
        Cautions(answer.Cautions),
        answer.Checks is { } plan ? Node.Group(Tag.H3("Check in this order"), Tag.Numbered(plan.Steps.Select(s => (Node)$"{s.Check.What} ({Format.Tick(s.Check.Minutes)} min)"))) : Node.Empty,
        answer.WhileThere.Count > 0 ? Node.Group(Tag.H3("While you are there"), Tag.List(answer.WhileThere.Select(w => (Node)$"{w.Advice} ({w.Figure})"))) : Node.Empty)
        .With("aria-labelledby", "answer-heading");

    // Steps share much of their cautions: each sentence stands once, before the steps.
    private static Node Cautions(IReadOnlyList<string> cautions)
    {
        string[] sentences = [.. cautions.SelectMany(Sentences).Distinct(StringComparer.Ordinal)];
        return sentences.Length == 0 ? Node.Empty : Tag.Div(Tag.H3("Before you open it"), Tag.List(sentences.Select(s => (Node)s))).Class("caution");
    }

    // A sentence ends with a full stop before a capital letter; "230 V." within one does not.
    private static IEnumerable<string> Sentences(string text)
    {
        int start = 0;
        for (int i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] == '.' && text[i + 1] == ' ' && char.IsUpper(text[i + 2]))
            {
                yield return text[start..(i + 1)];
                start = i + 2;
            }
        }

        yield return text[start..];
    }

    private static Node Need(LikelyNeed need) => Tag.Div(
        Tag.P(Tag.Span(Format.Percent(need.Odds)).Class("odds"), $" {Format.Words(need.Need)}, {need.Word}{(need.Bring ? ", bring it" : "")}"),
        Node.Group(need.Parts.Select(p => (Node)Tag.P(
            Tag.Span(p.Part.PartNumber).Class("number"),
            $" {p.Part.Description}; {(p.Vans.Count == 0 ? "on no van" : string.Join(", ", p.Vans.Select(v => $"van {v.Van} has {v.OnHand}")))}").Class("part")))).Class("need");
}
