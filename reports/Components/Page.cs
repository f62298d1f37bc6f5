using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;

namespace PartsSignal.Reports.Components;

/// <summary>
/// One self-contained document: its own style sheet, no script unless one of ours is given, and a content policy
/// that lets nothing else load or run, wherever the file is opened from. Pages that are components have the same
/// frame as <see cref="Document"/>.
/// </summary>
internal static class Page
{
    /// <summary>The document's text.</summary>
    /// <param name="title">Shown on the browser's tab and on printed pages.</param>
    /// <param name="body">What the body holds.</param>
    /// <param name="style">Text of its style sheet.</param>
    /// <param name="script">Script of our own, or null if the page has none.</param>
    public static string Render(string title, Node body, string style, string? script = null)
    {
        Node scriptNode = script is null ? Node.Empty : new Element("script", new TrustedNode(script));
        var head = new Element("head",
            new Element("meta").With("charset", "utf-8"),
            new Element("meta").With("http-equiv", "Content-Security-Policy").With("content", Policy(style, script, hasForm: false)),
            new Element("meta").With("name", "viewport").With("content", "width=device-width, initial-scale=1"),
            new Element("meta").With("name", "color-scheme").With("content", "light"),
            new Element("meta").With("name", "referrer").With("content", "no-referrer"),
            new Element("title", title),
            new Element("style", new TrustedNode(style)));
        var html = new Element("html", head, new Element("body", body, scriptNode)).With("lang", "en");
        return "<!DOCTYPE html>\n" + html;
    }

    /// <summary>The source expression that lets exactly this style sheet or script pass a content policy.</summary>
    public static string PolicyHash(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";

    /// <summary>The content policy of a document.</summary>
    /// <param name="style">Text of its style sheet.</param>
    /// <param name="script">Its script, or null if it has none.</param>
    /// <param name="hasForm">True if a form on it may ask the server it came from.</param>
    public static string Policy(string style, string? script, bool hasForm) =>
        "default-src 'none'; img-src data:; base-uri 'none'; form-action " + (hasForm ? "'self'" : "'none'") + "; style-src " + PolicyHash(style)
        + (script is null ? "" : "; script-src " + PolicyHash(script));
}

/// <summary>Files embedded in this assembly, by their path under <c>Assets/</c>.</summary>
internal static class Asset
{
    private static readonly ConcurrentDictionary<string, string> Texts = new(StringComparer.Ordinal);

    public static string Text(string path) => Texts.GetOrAdd(path, static p =>
    {
        using Stream stream = typeof(Asset).Assembly.GetManifestResourceStream("Assets/" + p)
            ?? throw new ArgumentException($"No embedded asset '{p}'.", nameof(path));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    });
}
