namespace PartsSignal.Reports.Components;

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
