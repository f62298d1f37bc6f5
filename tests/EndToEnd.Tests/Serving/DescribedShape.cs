using System.Text.Json;
using System.Text.Json.Nodes;

namespace PartsSignal.EndToEnd.Tests.Serving;

/// <summary>Compares a JSON answer with a schema of an API description, both ways: nothing missing, nothing undescribed.</summary>
internal static class DescribedShape
{
    public static IEnumerable<string> Faults(JsonNode description, JsonNode schema, JsonNode? value, string at = "")
    {
        JsonNode resolved = Resolve(description, schema);
        if (resolved["oneOf"] is JsonArray choices)
        {
            return choices.Any(c => !Faults(description, c!, value, at).Any()) ? [] : [$"{at}: fits no choice: {string.Join("; ", choices.SelectMany(c => Faults(description, c!, value, at)))}"];
        }

        string kind = Kind(value);
        string[] allowed = resolved["type"] switch
        {
            JsonArray several => [.. several.Select(t => (string)t!)],
            JsonNode one => [(string)one!],
            null => [],
        };
        if (allowed.Length > 0 && !allowed.Contains(kind) && !(kind == "number" && allowed.Contains("integer")))
        {
            return [$"{at}: is {kind}"];
        }

        return value switch
        {
            JsonArray items => resolved["items"] is { } item ? items.SelectMany((v, i) => Faults(description, item, v, $"{at}/{i}")) : [$"{at}: its items are not described"],
            JsonObject members => Members(description, resolved, members, at),
            _ => [],
        };
    }

    private static IEnumerable<string> Members(JsonNode description, JsonNode schema, JsonObject value, string at)
    {
        foreach (string required in (schema["required"] as JsonArray ?? []).Select(r => (string)r!).Where(r => !value.ContainsKey(r)))
        {
            yield return $"{at}/{required}: is missing";
        }

        foreach ((string name, JsonNode? member) in value)
        {
            JsonNode? described = schema["properties"]?[name] ?? schema["additionalProperties"];
            foreach (string fault in described is null ? [$"{at}/{name}: is not described"] : Faults(description, described, member, $"{at}/{name}"))
            {
                yield return fault;
            }
        }
    }

    private static JsonNode Resolve(JsonNode description, JsonNode schema) => (string?)schema["$ref"] is { } reference
        ? reference[2..].Split('/').Aggregate(description, (node, step) => node[step] ?? throw new InvalidDataException($"{reference} leads nowhere"))
        : schema;

    private static string Kind(JsonNode? value) => value?.GetValueKind() switch
    {
        null or JsonValueKind.Null => "null",
        JsonValueKind.Array => "array",
        JsonValueKind.Object => "object",
        JsonValueKind.String => "string",
        JsonValueKind.True or JsonValueKind.False => "boolean",
        _ => "number",
    };
}
