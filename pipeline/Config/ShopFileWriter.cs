using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Config;

/// <summary>Puts maps into <c>shop.json</c> and leaves everything else in it as it is (comments are lost).</summary>
internal static class ShopFileWriter
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    /// <summary>The text with the maps added; a map for the same files takes the place of the old one.</summary>
    /// <param name="text">Text of the file, or null if there is none yet.</param>
    /// <param name="maps">The maps.</param>
    /// <exception cref="BadInputException">The text is no JSON object.</exception>
    public static string With(string? text, IEnumerable<SourceMap> maps)
    {
        JsonObject shop;
        try
        {
            shop = text is null ? new JsonObject { ["$schema"] = "./" + ShopSchema.FileName } : JsonNode.Parse(text, documentOptions: Lenient) as JsonObject ?? throw new BadInputException($"{ShopFile.Name}: must be an object in braces.");
        }
        catch (JsonException bad)
        {
            throw new BadInputException($"{ShopFile.Name}: line {bad.LineNumber + 1}: is no JSON. Mend or remove it first.");
        }

        JsonArray sources = shop["sources"] as JsonArray ?? [];
        foreach (SourceMap map in maps)
        {
            JsonObject node = ToJson(map);
            int at = sources.ToList().FindIndex(s => s is JsonObject o && o["files"]?.GetValueKind() == JsonValueKind.String && o["files"]!.GetValue<string>() == map.Files);
            if (at >= 0)
            {
                sources[at] = node;
            }
            else
            {
                sources.Add((JsonNode)node);
            }
        }

        shop["sources"] = sources.Parent is null ? sources : sources.DeepClone();
        return shop.ToJsonString(Indented) + "\n";
    }

    /// <summary>Writes the maps into the file of a folder; beside it first, so that a kill leaves the old one.</summary>
    public static void Write(string folder, IReadOnlyList<SourceMap> maps)
    {
        string path = Path.Combine(folder, ShopFile.Name);
        if (!File.Exists(path))
        {
            File.WriteAllText(Path.Combine(folder, ShopSchema.FileName), ShopSchema.Build().ToJsonString(Indented) + "\n");
        }

        string text = With(File.Exists(path) ? File.ReadAllText(path) : null, maps);
        File.WriteAllText(path + ".part", text);
        File.Move(path + ".part", path, overwrite: true);
    }

    private static JsonObject ToJson(SourceMap map)
    {
        var node = new JsonObject { ["files"] = map.Files, ["kind"] = map.Kind };
        Add(node, "sheet", map.Sheet);
        Add(node, "encoding", map.Encoding);
        Add(node, "separator", map.Separator);
        if (map.HeaderLine is { } line)
        {
            node["headerLine"] = line;
        }

        Add(node, "dateOrder", map.DateOrder);
        Add(node, "numberStyle", map.NumberStyle);
        Add(node, "jobPrefix", map.JobPrefix);
        Add(node, "supplier", map.Supplier);
        AddAll(node, "fixed", map.Fixed, v => JsonValue.Create(v));
        AddAll(node, "columns", map.Columns, v => v.Count == 1 ? JsonValue.Create(v[0]) : new JsonArray([.. v.Select(h => (JsonNode)JsonValue.Create(h))]));
        if (map.PartGroups.Count > 0)
        {
            node["partGroups"] = new JsonArray([.. map.PartGroups.Select(g => (JsonNode)Object(g, v => JsonValue.Create(v)))]);
        }

        AddAll(node, "words", map.Words, w => Object(w, v => JsonValue.Create(v)));
        return node;
    }

    private static void Add(JsonObject node, string key, string? value)
    {
        if (value is not null)
        {
            node[key] = value;
        }
    }

    private static void AddAll<T>(JsonObject node, string key, IReadOnlyDictionary<string, T> values, Func<T, JsonNode> make)
    {
        if (values.Count > 0)
        {
            node[key] = Object(values, make);
        }
    }

    private static JsonObject Object<T>(IReadOnlyDictionary<string, T> values, Func<T, JsonNode> make)
    {
        var node = new JsonObject();
        foreach ((string key, T value) in values)
        {
            node[key] = make(value);
        }

        return node;
    }
}
