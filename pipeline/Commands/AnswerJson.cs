using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using PartsSignal.Analysis.PartPrediction.Answers;

namespace PartsSignal.Pipeline.Commands;

/// <summary>An answer for programs.</summary>
internal static class AnswerJson
{
    private static readonly JsonSerializerOptions Format = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DictionaryKeyPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    /// <summary>The answer as JSON text.</summary>
    public static string Text(Answer answer, string currency)
    {
        JsonObject json = JsonSerializer.SerializeToNode(answer, Format)!.AsObject();
        json["currency"] = currency;
        return json.ToJsonString(Format);
    }
}
