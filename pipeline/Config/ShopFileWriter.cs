using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Config;

/// <summary>Puts maps into <c>shop.json</c> and leaves everything else in it as it is (comments are lost).</summary>
internal static class ShopFileWriter
{
    private static readonly JsonSerializerOptions Indented = new(JsonSerializerOptions.Default) { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    /// <summary>Name of the copy of what stood there before.</summary>
    public const string PreviousName = "shop.previous.json";

    /// <summary>The text with the maps and answers added. What stands there stays, but for maps that are to be made anew.</summary>
    /// <param name="text">Text of the file; null: there is none yet.</param>
    /// <param name="maps">The maps.</param>
    /// <param name="answers">Answers to questions; of two to one question the new one holds.</param>
    /// <param name="anew">Whether a map takes the place of the one for the same table; null: none does.</param>
    /// <exception cref="BadInputException">The text is no JSON object.</exception>
    public static string With(string? text, IEnumerable<SourceMap> maps, IReadOnlyDictionary<string, string>? answers = null, Func<SourceMap, bool>? anew = null)
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
            int at = sources.ToList().FindIndex(s => s is JsonObject o && IsFor(o, map));
            if (at < 0)
            {
                sources.Add((JsonNode)ToJson(map));
            }
            else if (anew?.Invoke(map) == true)
            {
                sources[at] = ToJson(map);
            }
        }

        shop["sources"] = sources.Parent is null ? sources : sources.DeepClone();
        if (answers?.Count > 0)
        {
            JsonObject given = shop["answers"] as JsonObject ?? [];
            foreach ((string key, string choice) in answers)
            {
                given[key] = choice;
            }

            shop["answers"] = given.Parent is null ? given : given.DeepClone();
        }

        return shop.ToJsonString(Indented) + "\n";
    }

    /// <summary>Takes the maps of tables out that are to be left out.</summary>
    public static string Without(string text, IReadOnlyCollection<SourceMap> maps)
    {
        JsonObject shop = JsonNode.Parse(text, documentOptions: Lenient)!.AsObject();
        if (shop["sources"] is JsonArray sources)
        {
            foreach (JsonNode? gone in sources.Where(s => s is JsonObject o && maps.Any(m => IsFor(o, m))).ToList())
            {
                sources.Remove(gone);
            }
        }

        return shop.ToJsonString(Indented) + "\n";
    }

    /// <summary>Writes maps and answers into the file of a folder; beside it first, so that a kill leaves the old one, of which a copy is kept.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="text">The new text.</param>
    public static void Write(string folder, string text)
    {
        string path = Path.Combine(folder, ShopFile.Name);
        if (!File.Exists(path))
        {
            File.WriteAllText(Path.Combine(folder, ShopSchema.FileName), ShopSchema.Build().ToJsonString(Indented) + "\n");
        }
        else if (File.ReadAllText(path) is var before && before != text)
        {
            File.WriteAllText(Path.Combine(folder, PreviousName), before);
        }

        File.WriteAllText(path + ".part", text);
        File.Move(path + ".part", path, overwrite: true);
    }

    private static bool IsFor(JsonObject source, SourceMap map) =>
        Word(source, "files") == map.Files && (map.Sheet is null || Word(source, "sheet") is not { } sheet || sheet == map.Sheet);

    private static string? Word(JsonObject source, string key) => source[key]?.GetValueKind() == JsonValueKind.String ? source[key]!.GetValue<string>() : null;

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
        AddAll(node, "lists", map.Lists, ToJson);
        return node;
    }

    private static JsonObject ToJson(CodeList list)
    {
        var node = new JsonObject { ["file"] = list.File };
        Add(node, "sheet", list.Sheet);
        node["code"] = list.Code;
        node["meaning"] = list.Meaning;
        Add(node, "column", list.Column);
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
