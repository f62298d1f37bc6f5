using System.Runtime.CompilerServices;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// The current row by fields. The first cell that the row cannot do without sets <see cref="Fault"/>; lesser cells that
/// cannot be read count as unknown and are tallied. <see cref="FieldTexts"/> and <see cref="FieldValues"/> read them.
/// </summary>
/// <param name="cells">Cells of the current row.</param>
/// <param name="place">Names the place of a column and line for people.</param>
/// <param name="style">What holds for the whole file.</param>
/// <param name="mended">True for a file that was our own rejects.</param>
internal sealed class MappedRow(RowCells cells, Func<int, int, string> place, FileStyle style, bool mended = false)
{
    /// <summary>Why the row must be refused, or null if nothing has so far.</summary>
    public RowFault? Fault { get; private set; }

    /// <summary>Line of the row.</summary>
    public int Line { get; private set; }

    /// <summary>How many rows have begun: tells one row from the next.</summary>
    public long Number { get; private set; }

    /// <summary>Its cells.</summary>
    public RowCells Cells => cells;

    /// <summary>What holds for the whole file.</summary>
    public FileStyle Style => style;

    /// <summary>Cells that could not be read and count as unknown.</summary>
    public UnreadTally Unread { get; } = new();

    /// <summary>How often a value was held against its row's customer: what came of it holds for that row alone.</summary>
    public long CustomerChecks { get; private set; }

    /// <summary>Counts a value that is held against the row's customer.</summary>
    public void CheckCustomer() => CustomerChecks++;

    /// <summary>Name of the current row's cell in a column, for people.</summary>
    public string Place(int column) => place(column, Line);

    /// <summary>Starts on the row that <see cref="Cells"/> holds.</summary>
    public void Begin(int line) => (Line, Number, Fault, IsPlain) = (line, Number + 1, null, Cells.IsText && !mended);

    /// <summary>True for a row of a text file that we have not changed: a cell is what it says.</summary>
    public bool IsPlain { get; private set; }

    /// <summary>Refuses the row; the first fault stays.</summary>
    public void Fail(MappedField field, string code, string message, string? suggestion) => Fault ??= new RowFault(field.Name, code, message, suggestion);

    /// <summary>Tallies a cell that counts as unknown.</summary>
    public void Skip(MappedField field, string code) => Unread.Add(field.Name, code, Line);

    /// <summary>
    /// The cell as it stands in a text file, on which alone the field's value depends; false where it depends on more, or
    /// where the text may have been changed by us.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool TryPlain(MappedField field, out ReadOnlySpan<char> cell)
    {
        cell = Cells[field.Column];
        return IsPlain && (field.Column >= 0 || field.Columns.Length == 0);
    }

    /// <summary>The text as the file has it, trimmed; several columns joined with a blank.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ReadOnlySpan<char> Raw(MappedField field)
    {
        ReadOnlySpan<char> text = IsPlain && field.Column >= 0 ? Cells[field.Column].Trim() : Read(field);
        return text.IsEmpty ? field.Fixed : text;
    }

    /// <summary>The text with the file's words turned into ours; empty where the field is looked up by a key that its list lacks.</summary>
    public ReadOnlySpan<char> Span(MappedField field)
    {
        ReadOnlySpan<char> text = Raw(field);
        return field.Words is { } words && words.TryGetValue(text.ToString(), out string? ours) ? ours : field.IsLookedUp ? default : text;
    }

    private ReadOnlySpan<char> Read(MappedField field) => field.Columns.Length switch
    {
        0 => default,
        1 => Cell(field, field.Column),
        _ => Joined(field),
    };

    private ReadOnlySpan<char> Cell(MappedField field, int column)
    {
        if (Cells.Form(column) == CellForm.Error)
        {
            Fail(field, ReasonCode.FormulaError, $"The formula in {Place(column)} failed.", "Correct the formula, or type its value.");
            return default;
        }

        ReadOnlySpan<char> text = Cells[column].Trim();

        // Our own rejects file put the mark before what a spreadsheet would take for a formula.
        return mended && text.Length > 1 && text[0] == '\'' && text[1] is ('=' or '+' or '-' or '@') ? text[1..] : text;
    }

    private string Joined(MappedField field)
    {
        var parts = new List<string>(field.Columns.Length);
        foreach (int column in field.Columns)
        {
            ReadOnlySpan<char> cell = Cell(field, column);
            if (!cell.IsEmpty)
            {
                parts.Add(cell.ToString());
            }
        }

        return string.Join(' ', parts);
    }
}

/// <summary>Counts, by field and reason, cells that could not be read and count as unknown.</summary>
internal sealed class UnreadTally
{
    private readonly Dictionary<(string Field, string Code), (long Cells, int First)> _unread = [];

    /// <summary>All of them together.</summary>
    public long Cells { get; private set; }

    /// <summary>By field and reason, in no order.</summary>
    public IReadOnlyList<UnreadCells> ByField =>
        [.. _unread.Select(u => new UnreadCells(u.Key.Field, u.Key.Code, u.Value.Cells, u.Value.First))];

    /// <summary>Counts a cell.</summary>
    public void Add(string field, string code, int line)
    {
        Cells++;
        (long cells, int first) = _unread.GetValueOrDefault((field, code));
        _unread[(field, code)] = (cells + 1, first == 0 ? line : first);
    }
}
