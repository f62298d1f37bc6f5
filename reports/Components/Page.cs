using System.Security.Cryptography;
using System.Text;

namespace PartsSignal.Reports.Components;

/// <summary>
/// One self-contained document: its own style sheet, no script unless one of ours is given, and a content policy
/// that lets nothing else load or run, wherever the file is opened from.
/// </summary>
internal static class Page
{
    /// <summary>The document's text.</summary>
    /// <param name="title">Shown on the browser's tab and on printed pages.</param>
    /// <param name="body">What the body holds.</param>
    /// <param name="styleAsset">Style sheet, a path under <c>Assets/</c>.</param>
    /// <param name="script">Script of our own, an asset's text; null: none.</param>
    /// <param name="form">True: a form on it may ask the server it came from.</param>
    public static string Render(string title, Node body, string styleAsset = "report.css", string? script = null, bool form = false)
    {
        string style = Asset.Text(styleAsset);
        Node scriptNode = script is null ? Node.Empty : new Element("script", new TrustedNode(script));
        var head = new Element("head",
            new Element("meta").With("charset", "utf-8"),
            new Element("meta").With("http-equiv", "Content-Security-Policy").With("content", Policy(style, script, form)),
            new Element("meta").With("name", "viewport").With("content", "width=device-width, initial-scale=1"),
            new Element("meta").With("name", "color-scheme").With("content", "light"),
            new Element("meta").With("name", "referrer").With("content", "no-referrer"),
            new Element("title", title),
            new Element("style", new TrustedNode(style)));
        var html = new Element("html", head, new Element("body", body, scriptNode)).With("lang", "en");
        return "<!DOCTYPE html>\n" + html;
    }

    private static string Policy(string style, string? script, bool form) =>
        "default-src 'none'; img-src data:; base-uri 'none'; form-action " + (form ? "'self'" : "'none'") + "; style-src " + Hash(style)
        + (script is null ? "" : "; script-src " + Hash(script));

    private static string Hash(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";
}
