using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Phone;

/// <summary>The phone page: one file that answers from a phone's storage, in a cellar without signal.</summary>
public static class LookupPage
{
    // The default encoder writes every character that could end a script as an escape.
    private static readonly JsonSerializerOptions JsonStyle = new()
    {
        Encoder = JavaScriptEncoder.Default,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    /// <summary>The page's script, its parts in the order they lean on each other.</summary>
    internal static string Script { get; } = string.Concat(((string[])["words", "odds", "checks", "page"]).Select(s => Asset.Text($"lookup/{s}.js")));

    /// <summary>The document's text.</summary>
    public static string Render(LookupData data)
    {
        var json = new Element("script", new TrustedNode(JsonSerializer.Serialize(data, JsonStyle))).With("type", "application/json").Id("lookup-data");
        Node header = new Element("header",
            Tag.P(data.Shop).Class("kicker"),
            new Element("h1", "What will it need?"),
            Tag.P($"Data up to {Format.Day(data.AsOf)}.").Class("basis"),
            Tag.P().Class("stale").Id("stale").With("hidden", "").With("role", "alert"));
        Node form = new Element("form",
            Field("model", "Model number or family", "text", "as on the label"),
            Tag.Div().Id("model-list").Class("choices"),
            Types(data),
            Field("complaint", "Complaint", "text", "what the customer said"),
            Tag.Div().Id("complaint-list").Class("choices"),
            Field("age", "Age in years, if known", "number", ""),
            More(data),
            new Element("button", "Clear").With("type", "button").Id("clear")).Id("question").With("autocomplete", "off");
        Node answer = new Element("section", new Element("h2", "Answer").Id("answer-heading"), Tag.Div().Id("answer").With("aria-live", "polite"))
            .With("aria-labelledby", "answer-heading");
        Node footer = new Element("footer", Tag.P(Safety.Caution));
        Node body = Node.Group(header, new Element("main", form, answer, new Element("noscript", Tag.P("This page needs its own script to answer."))), footer, json);
        return Page.Render("What will it need?", body, StyleSheet.Phone, Script);
    }

    private static Node Field(string id, string label, string type, string hint) => Node.Group(
        new Element("label", label).With("for", id),
        new Element("input").Id(id).With("type", type).With("placeholder", hint)
            .With("autocapitalize", "off").With("spellcheck", "false").With(type == "number" ? "min" : "maxlength", type == "number" ? "0" : "80"));

    private static Node More(LookupData data) => new Element("details",
        new Element("summary", "More that sharpens the odds"),
        Field("code", "Code on the display", "text", "for example E20"),
        Field("built", "Built, from the label", "text", "2021 or 2021-05"),
        new Element("label", "Customer").With("for", "customer"),
        new Element("select", new Element("option", "household").With("value", "household"), new Element("option", "contract").With("value", "contract")).Id("customer"),
        Field("earlier", "Repaired here before, days ago", "number", ""),
        new Element("label", "It needed then").With("for", "earlier-need"),
        new Element("select", [
            new Element("option", "not known").With("value", ""),
            .. data.Needs.Select(n => (Node)new Element("option", n switch { "none" => "no part", "other_part" => "another part", _ => Format.Words(n) }).With("value", n))]).Id("earlier-need"),
        new Element("label", new Element("input").Id("earlier-same").With("type", "checkbox"), " for the same complaint").Class("tick"));

    private static Node Types(LookupData data)
    {
        string[] types = ["", .. ApplianceType.Named.Union(data.Models.Select(m => m.Type).OfType<string>().Where(t => t != ApplianceType.Other).Order(StringComparer.Ordinal), StringComparer.Ordinal)];
        return Node.Group(
            new Element("label", "Appliance, if the model is not known").With("for", "type"),
            new Element("select", [.. types.Select(t => (Node)new Element("option", t.Length == 0 ? "not told" : Format.Words(t)).With("value", t))]).Id("type"));
    }
}
