namespace PartsSignal.Reports.Components;

/// <summary>
/// An element with attributes and children. Attribute names are checked: nothing that runs script or carries style can be
/// set, and a link leads to a place in the page or to a file beside it.
/// </summary>
internal sealed class Element : Node
{
    private static readonly HashSet<string> Void = ["meta", "br", "hr", "link", "input", "col"];
    private static readonly HashSet<string> Blocks =
        ["html", "head", "body", "main", "header", "footer", "nav", "section", "div", "figure", "table", "thead", "tbody", "tr", "ul", "ol", "li", "dl", "p", "h1", "h2", "h3", "h4", "meta", "title", "style", "script"];

    private readonly string _name;
    private readonly IReadOnlyList<Node> _children;
    private readonly IReadOnlyList<(string Name, string Value)> _attributes;

    /// <summary>An element without attributes.</summary>
    public Element(string name, params ReadOnlySpan<Node> children)
        : this(name, [], [.. children])
    {
    }

    private Element(string name, IReadOnlyList<(string Name, string Value)> attributes, IReadOnlyList<Node> children) =>
        (_name, _attributes, _children) = (name, attributes, children);

    /// <summary>The same element with one attribute more.</summary>
    /// <exception cref="ArgumentException">The attribute could run something or reach another address.</exception>
    public Element With(string attribute, string value)
    {
        Check(attribute, value);
        return new Element(_name, [.. _attributes, (attribute, value)], _children);
    }

    /// <summary>The same element with a class.</summary>
    public Element Class(string name) => With("class", name);

    /// <summary>The same element with an id.</summary>
    public Element Id(string id) => With("id", id);

    internal override void Write(TextWriter writer)
    {
        writer.Write('<');
        writer.Write(_name);
        foreach ((string name, string value) in _attributes)
        {
            writer.Write(' ');
            writer.Write(name);
            writer.Write("=\"");
            Escaping.WriteText(writer, value);
            writer.Write('"');
        }

        writer.Write('>');
        if (!Void.Contains(_name))
        {
            foreach (Node child in _children)
            {
                child.Write(writer);
            }

            writer.Write("</");
            writer.Write(_name);
            writer.Write('>');
        }

        if (Blocks.Contains(_name))
        {
            writer.Write('\n');
        }
    }

    private static void Check(string attribute, string value)
    {
        bool plain = attribute.Length > 0 && attribute.All(c => char.IsAsciiLetterLower(c) || c is '-');
        if (!plain || attribute.StartsWith("on", StringComparison.Ordinal) || attribute is "style" or "src" or "srcdoc" or "srcset")
        {
            throw new ArgumentException($"Attribute '{attribute}' is not allowed on a page.", nameof(attribute));
        }

        if (attribute is "href" or "action" && !IsLocal(value))
        {
            throw new ArgumentException($"'{value}' leads away from the page.", nameof(value));
        }
    }

    private static bool IsLocal(string link) =>
        link.StartsWith('#') || (link.Length > 0 && link[0] != '/' && !link.Contains(':', StringComparison.Ordinal) && !link.Contains('\\', StringComparison.Ordinal));
}

/// <summary>Short names for the elements pages are made of.</summary>
internal static class Tag
{
    public static Element P(params ReadOnlySpan<Node> children) => new("p", children);

    public static Element Div(params ReadOnlySpan<Node> children) => new("div", children);

    public static Element Span(params ReadOnlySpan<Node> children) => new("span", children);

    public static Element Strong(params ReadOnlySpan<Node> children) => new("strong", children);

    public static Element H2(params ReadOnlySpan<Node> children) => new("h2", children);

    public static Element H3(params ReadOnlySpan<Node> children) => new("h3", children);

    public static Element Link(string to, params ReadOnlySpan<Node> children) => new Element("a", children).With("href", to);

    public static Element List(IEnumerable<Node> items) => new("ul", [.. items.Select(i => new Element("li", i))]);

    public static Element Numbered(IEnumerable<Node> items) => new("ol", [.. items.Select(i => new Element("li", i))]);
}
