namespace PartsSignal.Reports.Components;

/// <summary>A part of a section: a paragraph, a table, a plot, or a note on what is missing.</summary>
internal interface IBlock
{
    /// <summary>Draws it.</summary>
    /// <param name="currency">The shop's currency mark.</param>
    Node Draw(string currency);
}

/// <summary>Running text.</summary>
internal sealed record Paragraph(string Text) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.P(Text);
}

/// <summary>A heading within a section.</summary>
internal sealed record SubHeading(string Text) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.H3(Text);
}

/// <summary>Sentences, numbered.</summary>
internal sealed record Sentences(IReadOnlyList<string> Lines) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.Numbered(Lines.Select(l => (Node)l)).Class("month");
}

/// <summary>Says what cannot be shown, and what would be needed to show it.</summary>
internal sealed record Missing(string Text) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.Div(Tag.P(Text)).Class("missing");
}

/// <summary>Plots that may stand side by side.</summary>
internal sealed record SideBySide(IReadOnlyList<IBlock> Blocks) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => Tag.Div([.. Blocks.Select(b => b.Draw(currency))]).Class("figures");
}

/// <summary>One section of a page, apart from how it is drawn.</summary>
/// <param name="Anchor">Its id on the page.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">What it holds, in order.</param>
internal sealed record Section(string Anchor, string Heading, IReadOnlyList<IBlock> Blocks)
{
    /// <summary>All tables in it, for the workbook.</summary>
    public IEnumerable<TableView> Tables => Flat(Blocks).OfType<TableView>();

    internal Node Draw(string currency)
    {
        string heading = "heading-" + Anchor;
        return new Element("section", [Tag.H2(Heading).Id(heading), .. Blocks.Select(b => b.Draw(currency))])
            .Id(Anchor).With("aria-labelledby", heading);
    }

    private static IEnumerable<IBlock> Flat(IEnumerable<IBlock> blocks) =>
        blocks.SelectMany(b => b is SideBySide side ? Flat(side.Blocks) : [b]);
}
