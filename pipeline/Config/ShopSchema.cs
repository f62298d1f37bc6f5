using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Config;

/// <summary>The JSON schema of <c>shop.json</c>: the shipped frame, with kinds and fields from the catalog.</summary>
internal static class ShopSchema
{
    /// <summary>Name of the file that is put beside a new <c>shop.json</c>, so that an editor can help.</summary>
    public const string FileName = "shop.schema.json";

    /// <summary>The schema.</summary>
    public static JsonObject Build()
    {
        JsonObject schema = JsonNode.Parse(WordTable.ReadDefault(FileName))!.AsObject();
        JsonObject source = schema["properties"]!["sources"]!["items"]!.AsObject();
        JsonObject keys = source["properties"]!.AsObject();
        keys["kind"]!["enum"] = Texts(FieldCatalog.Kinds);
        JsonArray every = Texts(FieldCatalog.All.Select(f => f.Name).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        foreach (string key in (string[])["fixed", "columns", "words", "lists"])
        {
            keys[key]!["propertyNames"]!["enum"] = every.DeepClone();
        }

        keys["partGroups"]!["items"]!["properties"] = new JsonObject(FieldCatalog.PartLine.Select(f => KeyValuePair.Create(f, (JsonNode?)new JsonObject { ["type"] = "string" })));
        source["allOf"] = new JsonArray([.. FieldCatalog.Kinds.Select(Rule)]);
        return schema;
    }

    // Which fields a map of that kind may name, each with its meaning.
    private static JsonNode Rule(string kind) => new JsonObject
    {
        ["if"] = new JsonObject { ["properties"] = new JsonObject { ["kind"] = new JsonObject { ["const"] = kind } } },
        ["then"] = new JsonObject
        {
            ["properties"] = new JsonObject
            {
                ["columns"] = new JsonObject
                {
                    ["properties"] = new JsonObject(FieldCatalog.Of(kind).Select(f => KeyValuePair.Create(f.Name, (JsonNode?)new JsonObject { ["description"] = f.Meaning }))),
                    ["propertyNames"] = new JsonObject { ["enum"] = Texts(FieldCatalog.Of(kind).Select(f => f.Name)) },
                },
            },
        },
    };

    private static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode)JsonValue.Create(t))]);
}
