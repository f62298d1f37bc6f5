using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Commands;

/// <summary>What <c>inspect</c> says, for programs: columns, tables with their doubts and notes, and questions.</summary>
internal static class InspectJson
{
    private static readonly JsonSerializerOptions Indented = new(JsonSerializerOptions.Default) { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text.</summary>
    public static string Of(IReadOnlyList<ShopInspection> shops, JsonArray columns) => new JsonObject
    {
        ["tables"] = List(shops.SelectMany(s => s.Tables).Select(Table)),
        ["columns"] = columns,
        ["questions"] = List(shops.SelectMany(s => s.Questions).Select(Question)),
        ["more_questions"] = shops.Sum(s => s.MoreQuestions),
    }.ToJsonString(Indented);

    private static JsonObject Table(Inspection table) => new()
    {
        ["file"] = table.File,
        ["sheet"] = table.Sheet,
        ["kind"] = table.Map?.Kind ?? "none",
        ["rows"] = table.Rows,
        ["rows_not_whole"] = table.BadRows,
        ["doubts"] = List(table.Doubts.Select(d => (JsonNode)d)),
        ["notes"] = List(table.Notes.Select(n => (JsonNode)n)),
    };

    private static JsonObject Question(ReadingQuestion question) => new()
    {
        ["key"] = question.Key,
        ["file"] = question.File,
        ["sheet"] = question.Sheet,
        ["column"] = question.Column,
        ["field"] = question.Field,
        ["text"] = question.Text,
        ["choices"] = List(question.Choices.Select(c => new JsonObject { ["value"] = c.Value, ["label"] = c.Label })),
        ["examples"] = List(question.Examples.Select(e => (JsonNode)e)),
        ["consequence"] = question.Consequence,
        ["default"] = question.Default,
        ["also"] = List(question.Also.Select(t => new JsonObject { ["file"] = t.File, ["sheet"] = t.Sheet })),
    };

    private static JsonArray List(IEnumerable<JsonNode> items) => [.. items];
}
