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

    /// <summary>Money in the shop's currency.</summary>
    Money,

    /// <summary>A day.</summary>
    Day,
}

/// <summary>One column of a table.</summary>
/// <param name="Head">Heading, with the unit where there is one.</param>
/// <param name="Kind">How its cells are written.</param>
public sealed record TableColumn(string Head, CellKind Kind = CellKind.Text);
