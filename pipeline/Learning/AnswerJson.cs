using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using PartsSignal.Analysis.Prediction.Answers;

namespace PartsSignal.Pipeline.Learning;

/// <summary>An answer as JSON, the same from the command line and from the server.</summary>
internal static class AnswerJson
{
    /// <summary>Adds the naming rules of the answer to serializer options.</summary>
    public static JsonSerializerOptions Apply(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower;
        options.DictionaryKeyPolicy = JsonNamingPolicy.SnakeCaseLower;
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower));
        return options;
    }

    private static readonly JsonSerializerOptions Format = Apply(new JsonSerializerOptions());

    /// <summary>The answer with the shop's currency.</summary>
    public static JsonObject Create(Answer answer, string currency)
    {
        JsonObject json = JsonSerializer.SerializeToNode(answer, Format)!.AsObject();
        json["currency"] = currency;
        return json;
    }
}
