using System.IO.Enumeration;
using System.Text.Json;

namespace PartsSignal.EndToEnd.Tests.UnknownShops;

/// <summary>One of the maps that <c>inspect --write</c> left: its kind, and which header gives which field.</summary>
internal sealed record SavedMap(string Files, IReadOnlyList<string> Sheets, string Kind, IReadOnlyList<(string Field, string Header)> Columns)
{
    public bool IsFor(TableTruth table) =>
        FileSystemName.MatchesSimpleExpression(Files, table.File)
        && (table.Sheet is null || Sheets.Count == 0 || Sheets.Any(s => FileSystemName.MatchesSimpleExpression(s, table.Sheet)));
}

/// <summary>A question of <c>inspect</c>: what it is about, and the words in it that name a column.</summary>
internal sealed record AskedQuestion(string Key, string File, string? Sheet, string? Column, string? Field, IReadOnlyList<string> Choices, string Text)
{
    /// <summary>Further tables that the question names: the answer holds for them as well.</summary>
    public IReadOnlyList<(string File, string? Sheet)> Also { get; init; } = [];

    public bool IsAbout(TableTruth table) => Also.Prepend((File, Sheet)).Any(t => t.Item1 == table.File && (table.Sheet is null || t.Item2 is null || t.Item2 == table.Sheet));

    public bool AsksKind => Key.EndsWith("/kind", StringComparison.Ordinal);
}

/// <summary>What the program made of a folder: the maps it wrote and the questions it asked.</summary>
internal sealed record ShopReading(IReadOnlyList<SavedMap> Maps, IReadOnlyList<AskedQuestion> Questions)
{
    /// <summary>Lets the program look at a folder and write its maps, with no answer given.</summary>
    public static async Task<ShopReading> InspectAsync(string folder)
    {
        Partssignal inspect = await Partssignal.RunAsync("inspect", folder, "--write", "--format", "json");
        Assert.True(inspect.ExitCode is 0 or 2, $"inspect ended with {inspect.ExitCode}: {inspect.Error}");
        string file = Path.Combine(folder, "shop.json");
        using JsonDocument said = JsonDocument.Parse(inspect.Out.Length == 0 ? "[]" : inspect.Out); // a refusal of the whole folder asks nothing
        IReadOnlyList<AskedQuestion> questions = said.RootElement.ValueKind == JsonValueKind.Object && said.RootElement.TryGetProperty("questions", out JsonElement asked)
            ? [.. asked.EnumerateArray().Select(Question)]
            : [];
        if (!File.Exists(file))
        {
            return new ShopReading([], questions);
        }

        using JsonDocument shop = JsonDocument.Parse(File.ReadAllText(file));
        return new ShopReading(shop.RootElement.TryGetProperty("sources", out JsonElement sources) ? [.. sources.EnumerateArray().Select(Map)] : [], questions);
    }

    private static AskedQuestion Question(JsonElement question) => new(
        Text(question, "key") ?? "",
        Text(question, "file") ?? "",
        Text(question, "sheet"),
        Text(question, "column"),
        Text(question, "field"),
        question.TryGetProperty("choices", out JsonElement choices) && choices.ValueKind == JsonValueKind.Array ? [.. choices.EnumerateArray().Select(c => Text(c, "value") ?? "")] : [],
        Text(question, "text") ?? "")
    {
        Also = [.. Items(Property(question, "also")).Select(t => (Text(t, "file") ?? "", Text(t, "sheet")))],
    };

    private static SavedMap Map(JsonElement source)
    {
        var columns = new List<(string, string)>();
        foreach (JsonElement group in (IEnumerable<JsonElement>)[Property(source, "columns"), .. Items(Property(source, "partGroups"))])
        {
            columns.AddRange(group.ValueKind != JsonValueKind.Object ? [] : group.EnumerateObject().SelectMany(f => Items(f.Value).Select(h => (f.Name, Plain(h.GetString()!)))));
        }

        return new SavedMap(
            Text(source, "files")!,
            [.. Items(Property(source, "sheet")).Concat(Items(Property(source, "sheets"))).Select(s => s.GetString()!)],
            Text(source, "kind")!,
            columns);
    }

    /// <summary>A header without the marks that say nothing: its case, and blanks beside or in a row.</summary>
    public static string Plain(string header) => string.Join(' ', header.Split([' ', '\t', '\r', '\n', '\uFEFF', '\u00A0'], StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();

    private static JsonElement Property(JsonElement parent, string name) => parent.TryGetProperty(name, out JsonElement found) ? found : default;

    private static IEnumerable<JsonElement> Items(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Array => [.. value.EnumerateArray()],
        JsonValueKind.Undefined or JsonValueKind.Null => [],
        _ => [value],
    };

    private static string? Text(JsonElement parent, string name) => Property(parent, name) is { ValueKind: JsonValueKind.String } text ? text.GetString() : null;
}
