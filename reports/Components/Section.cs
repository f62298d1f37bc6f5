namespace PartsSignal.Reports.Components;

/// <summary>One section of a page, apart from how it is drawn.</summary>
/// <param name="Anchor">Its id on the page.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">What it holds, in order.</param>
public sealed record Section(string Anchor, string Heading, IReadOnlyList<IBlock> Blocks)
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
