namespace PartsSignal.Reports.Components;

/// <summary>
/// One table of the report, apart from how it is drawn: the page shows it, the workbook holds it as a sheet.
/// </summary>
/// <param name="Key">Short name, letters and hyphens: the anchor on the page and the sheet's name.</param>
/// <param name="Title">What the table lists.</param>
/// <param name="Basis">What the figures count, from when to when, and how many.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">Cells by column: string, int, long, double, decimal, DateOnly, <see cref="Analysis.Statistics.Estimate"/>, <see cref="Cell"/> or null (not known).</param>
/// <param name="WhenEmpty">What it means that there are no rows.</param>
/// <param name="RowsOnPage">Rows the page shows; the workbook holds all.</param>
public sealed record TableView(
    string Key,
    string Title,
    string Basis,
    IReadOnlyList<TableColumn> Columns,
    IReadOnlyList<IReadOnlyList<object?>> Rows,
    string WhenEmpty = "Nothing to list.",
    int RowsOnPage = int.MaxValue) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency) => TableMarkup.Draw(this, currency);
}

/// <summary>A cell of another kind than its column, for tables whose rows are different figures.</summary>
public sealed record Cell(object? Value, CellKind Kind);
