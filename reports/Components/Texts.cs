namespace PartsSignal.Reports.Components;

/// <summary>Running text.</summary>
public sealed record Paragraph(string Text) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.P(Text);
}

/// <summary>A heading within a section.</summary>
public sealed record SubHeading(string Text) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.H3(Text);
}

/// <summary>Sentences, numbered.</summary>
public sealed record Sentences(IReadOnlyList<string> Lines) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.Numbered(Lines.Select(l => (Node)l)).Class("month");
}

/// <summary>A warning about work that can hurt someone.</summary>
public sealed record Caution(string Text) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.Div(Tag.P(Tag.Strong("Caution. "), Text)).Class("caution").With("role", "note");
}

/// <summary>Says what cannot be shown, and what would be needed to show it.</summary>
public sealed record Missing(string Text) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.Div(Tag.P(Text)).Class("missing");
}

/// <summary>Plots that may stand side by side.</summary>
public sealed record SideBySide(IReadOnlyList<IBlock> Blocks) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.Div([.. Blocks.Select(b => b.Draw(currency))]).Class("figures");
}
