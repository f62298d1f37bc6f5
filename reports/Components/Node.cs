namespace PartsSignal.Reports.Components;

/// <summary>
/// A piece of a page. Everything that came from data is text, and text is escaped where it is written: no code outside
/// this project can put raw markup into a page.
/// </summary>
internal abstract class Node
{
    /// <summary>Nothing.</summary>
    public static Node Empty { get; } = new GroupNode([]);

    /// <summary>Text, shown as typed; null shows nothing.</summary>
    public static implicit operator Node(string? text) => new TextNode(text ?? "");

    /// <summary>Several pieces, one after the other.</summary>
    public static Node Group(IEnumerable<Node> parts) => new GroupNode([.. parts]);

    /// <summary>Several pieces, one after the other.</summary>
    public static Node Group(params ReadOnlySpan<Node> parts) => new GroupNode([.. parts]);

    /// <summary>The markup of this piece.</summary>
    public override string ToString()
    {
        using var writer = new StringWriter { NewLine = "\n" };
        Write(writer);
        return writer.ToString();
    }

    internal abstract void Write(TextWriter writer);
}

/// <summary>Text from data.</summary>
internal sealed class TextNode(string text) : Node
{
    internal override void Write(TextWriter writer) => Escaping.WriteText(writer, text);
}

/// <summary>Several pieces, one after the other.</summary>
internal sealed class GroupNode(IReadOnlyList<Node> parts) : Node
{
    internal override void Write(TextWriter writer)
    {
        foreach (Node part in parts)
        {
            part.Write(writer);
        }
    }
}

/// <summary>Markup that this project produced: a drawing that went through an XML writer, or one of its own assets.</summary>
internal sealed class TrustedNode(string markup) : Node
{
    internal override void Write(TextWriter writer) => writer.Write(markup);
}
