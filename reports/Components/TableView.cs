using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Components;

/// <summary>How a column's cells are written.</summary>
public enum CellKind
{
    /// <summary>Words, shown as they are.</summary>
    Text,

    /// <summary>A job or part number: text that is never broken over two lines.</summary>
    Code,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>A share, 0 to 1, shown as a percentage.</summary>
    Share,

    /// <summary>Any other number.</summary>
    Number,

    /// <summary>A number of days, with a decimal only where it has one.</summary>
    Days,

    /// <summary>Money in the shop's currency.</summary>
    Money,

    /// <summary>A day.</summary>
    Day,
}

/// <summary>One column of a table.</summary>
/// <param name="Head">Heading, with the unit where there is one.</param>
/// <param name="Kind">How its cells are written.</param>
internal sealed record TableColumn(string Head, CellKind Kind = CellKind.Text);

/// <summary>One column of a table over records.</summary>
/// <param name="Head">Heading, with the unit where there is one.</param>
/// <param name="Value">What a record shows in it; see <see cref="TableView.Rows"/>.</param>
/// <param name="Kind">How its cells are written.</param>
internal sealed record RecordColumn<T>(string Head, Func<T, object?> Value, CellKind Kind = CellKind.Text);

/// <summary>A cell of another kind than its column, for tables whose rows are different figures.</summary>
internal sealed record Cell(object? Value, CellKind Kind);

/// <summary>One table of the report, apart from how it is drawn: the page shows it, the workbook holds it as a sheet.</summary>
/// <param name="Key">Short name, letters and hyphens: the anchor on the page.</param>
/// <param name="Title">What the table lists.</param>
/// <param name="Basis">What the figures count, from when to when, and how many.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">Cells by column: string, int, long, double, decimal, DateOnly, <see cref="Estimate"/>, <see cref="Cell"/>, or null if not known.</param>
internal sealed record TableView(
    string Key, string Title, string Basis, IReadOnlyList<TableColumn> Columns, IReadOnlyList<IReadOnlyList<object?>> Rows) : IBlock
{
    /// <summary>What it means that there are no rows.</summary>
    public string WhenEmpty { get; init; } = "Nothing to list.";

    /// <summary>Rows the page shows; the workbook holds all.</summary>
    public int RowsOnPage { get; init; } = int.MaxValue;

    /// <summary>A table with a row per record.</summary>
    public static TableView Create<T>(string key, string title, string basis, IEnumerable<T> records, IReadOnlyList<RecordColumn<T>> columns) => new(
        key, title, basis, [.. columns.Select(c => new TableColumn(c.Head, c.Kind))],
        [.. records.Select(r => (IReadOnlyList<object?>)[.. columns.Select(c => c.Value(r))])]);

    /// <inheritdoc/>
    public Node Draw(string currency) => TableMarkup.Draw(this, currency);
}
