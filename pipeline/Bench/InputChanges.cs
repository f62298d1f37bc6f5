using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Review;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Says in an owner's words what differs between the inputs of two updates.</summary>
internal static class InputChanges
{
    private const long MostBytes = 4 << 20;
    private const string AnswersKey = "answers";
    private const string SourcesKey = "sources";

    /// <summary>The differences, files first; empty: none.</summary>
    /// <param name="old">Path to hash before.</param>
    /// <param name="now">Path to hash now.</param>
    /// <param name="oldText">Text of a path before, or null if it cannot be had.</param>
    /// <param name="nowText">Text of a path now, or null likewise.</param>
    public static IReadOnlyList<string> Describe(IReadOnlyDictionary<string, string> old, IReadOnlyDictionary<string, string> now, Func<string, string?> oldText, Func<string, string?> nowText)
    {
        ILookup<Kind, string> differing = ShopInputs.Differing(old, now).ToLookup(KindOf);
        return
        [
            .. differing[Kind.File].Select(p => $"{p} {(!old.ContainsKey(p) ? "added" : now.ContainsKey(p) ? "changed" : "removed")}"),
            .. differing[Kind.Mended].Any() ? new[] { "mended rows" } : [],
            .. differing[Kind.Answers].Select(p => Answers(p, Before(p), After(p))),
            .. differing[Kind.Settings].SelectMany(p => Settings(Before(p), After(p))),
        ];

        string? Before(string path) => old.ContainsKey(path) ? oldText(path) : "";

        string? After(string path) => now.ContainsKey(path) ? nowText(path) : "";
    }

    /// <summary>Text of a file, or null if it is gone or too large to compare.</summary>
    public static string? Text(string path) => new FileInfo(path) is { Exists: true, Length: <= MostBytes } ? File.ReadAllText(path) : null;

    private static Kind KindOf(string path) =>
        path == ShopFile.Name ? Kind.Settings
        : ReviewNames.All.Contains(path.Split('/')[^1]) ? Kind.Answers
        : path.StartsWith(RejectFile.MendedFolder + "/", StringComparison.Ordinal) ? Kind.Mended
        : Kind.File;

    // Each answered row is a line; a header may stand above them.
    private static string Answers(string path, string? old, string? now)
    {
        string about = ReviewList.All.Single(l => l.File == path.Split('/')[^1]).Title.ToLowerInvariant();
        if (old is null || now is null)
        {
            return $"answers about {about}";
        }

        string[] before = Lines(old), after = Lines(now);
        int differing = Math.Max(1, Math.Max(after.Except(before, StringComparer.Ordinal).Count(), before.Except(after, StringComparer.Ordinal).Count()));
        return $"{Counted.Of(differing, "answer")} about {about}";

        static string[] Lines(string text) => [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1)];
    }

    private static IEnumerable<string> Settings(string? old, string? now)
    {
        if (Parse(old) is not { } before || Parse(now) is not { } after)
        {
            return ["settings changed"];
        }

        var said = new List<string>();
        int answers = Differing(before[AnswersKey] as JsonObject ?? [], after[AnswersKey] as JsonObject ?? [], []);
        if (answers > 0)
        {
            said.Add($"{Counted.Of(answers, "answer")} about files");
        }

        if (!JsonNode.DeepEquals(before[SourcesKey], after[SourcesKey]))
        {
            said.Add("how files are read changed");
        }

        if (Differing(before, after, [AnswersKey, SourcesKey, "$schema"]) > 0)
        {
            said.Add("settings changed");
        }

        return said;
    }

    private static int Differing(JsonObject old, JsonObject now, string[] but) =>
        old.Select(p => p.Key).Union(now.Select(p => p.Key), StringComparer.Ordinal).Count(k => !but.Contains(k) && !JsonNode.DeepEquals(old[k], now[k]));

    private static JsonObject? Parse(string? text)
    {
        try
        {
            return text is null ? null : text.Length == 0 ? [] : JsonNode.Parse(text, documentOptions: new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }) as JsonObject;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private enum Kind
    {
        File,
        Mended,
        Answers,
        Settings,
    }
}
