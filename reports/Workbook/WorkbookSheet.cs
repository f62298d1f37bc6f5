using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Workbook;

/// <summary>One sheet of a workbook.</summary>
/// <param name="Name">Its name; characters that a workbook does not accept are replaced, and equal names are told apart.</param>
/// <param name="Heads">Headings of the columns.</param>
/// <param name="Rows">One cell per column.</param>
public sealed record WorkbookSheet(string Name, IReadOnlyList<string> Heads, IReadOnlyList<IReadOnlyList<WorkbookCell>> Rows);

/// <summary>One figure or text of a sheet, and how it is shown.</summary>
/// <param name="Value">Text, a number, a <see cref="DateOnly"/>, or null for an empty cell.</param>
/// <param name="Kind">Number format.</param>
public sealed record WorkbookCell(object? Value, CellKind Kind);
