using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Workbook;

/// <summary>One sheet of a workbook.</summary>
/// <param name="Name">Its name; characters that a workbook does not accept are replaced, and equal names are told apart.</param>
/// <param name="Heads">Headings of the columns.</param>
/// <param name="Rows">One cell per column.</param>
public sealed record WorkbookSheet(string Name, IReadOnlyList<string> Heads, IReadOnlyList<IReadOnlyList<WorkbookCell>> Rows)
{
    /// <summary>What makes the sheet a form to fill in, or null for a table to read.</summary>
    public WorkbookForm? Form { get; init; }

    /// <summary>True hides the sheet: it only holds what drop-downs offer. At least one sheet of a workbook must be shown.</summary>
    public bool IsHidden { get; init; }
}

/// <summary>Makes a sheet a form: whatever is typed into its cells stays text, and one column is to be filled in.</summary>
/// <param name="AnswerColumn">The column to fill in, from 0. It is tinted.</param>
/// <param name="Choices">
/// Cells whose texts its drop-down offers, such as <c>$E2:$G2</c> or <c>choices!$A$1:$A$80</c>. A relative row is that of the
/// first row below the heading and moves with each row. Other text may be typed too. Null: no drop-down.
/// </param>
public sealed record WorkbookForm(int AnswerColumn, string? Choices);

/// <summary>One figure or text of a sheet, and how it is shown.</summary>
/// <param name="Value">Text, a number, a <see cref="DateOnly"/>, or null for an empty cell.</param>
/// <param name="Kind">Number format.</param>
public sealed record WorkbookCell(object? Value, CellKind Kind);
