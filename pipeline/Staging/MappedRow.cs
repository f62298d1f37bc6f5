using System.Runtime.CompilerServices;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// The current row by fields, cleaned on demand. The first cell that the row cannot do without sets
/// <see cref="Fault"/>; lesser cells that cannot be read count as unknown and are tallied.
/// </summary>
/// <param name="cells">Cells of the current row.</param>
/// <param name="place">Names the place of a column and line for people.</param>
/// <param name="style">What holds for the whole file.</param>
/// <param name="mended">True for a file that was our own rejects.</param>
internal sealed class MappedRow(RowCells cells, Func<int, int, string> place, FileStyle style, bool mended = false)
{
    private const int MaxTextLength = 20_000;
    private bool _plain;

    /// <summary>Why the row must be refused; null: nothing so far.</summary>
    public RowFault? Fault { get; private set; }

    /// <summary>Line of the row.</summary>
    public int Line { get; private set; }

    /// <summary>Its cells.</summary>
    public RowCells Cells => cells;

    /// <summary>What holds for the whole file.</summary>
    public FileStyle Style => style;

    /// <summary>Cells that could not be read and count as unknown.</summary>
    public UnreadTally Unread { get; } = new();

    /// <summary>Starts on the row that <see cref="Cells"/> holds.</summary>
    public void Begin(int line) => (Line, Fault, _plain) = (line, null, Cells.IsText && !mended);

    /// <summary>True for a row of a text file that we have not changed: a cell is what it says.</summary>
    public bool IsPlain => _plain;

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
        return _plain && (field.Column >= 0 || field.Columns.Length == 0);
    }

    /// <summary>The text as the file has it, trimmed; several columns joined with a blank.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ReadOnlySpan<char> Raw(MappedField field)
    {
        ReadOnlySpan<char> text = _plain && field.Column >= 0 ? Cells[field.Column].Trim() : Read(field);
        return text.IsEmpty ? field.Fixed : text;
    }

    /// <summary>The text with the file's words turned into ours.</summary>
    public ReadOnlySpan<char> Span(MappedField field)
    {
        ReadOnlySpan<char> text = Raw(field);
        return field.Words is { } words && words.TryGetValue(text.ToString(), out string? ours) ? ours : text;
    }

    /// <summary>Text, or null where the cell is empty.</summary>
    public string? Text(MappedField field)
    {
        ReadOnlySpan<char> text = Span(field);
        return text.Length > MaxTextLength || text.Contains('\0') ? FreeText(field) : text.IsEmpty ? null : field.Pooled(text);
    }

    /// <summary>The same, for texts that hardly repeat themselves.</summary>
    public string? FreeText(MappedField field)
    {
        ReadOnlySpan<char> text = Span(field);
        if (text.Length > MaxTextLength)
        {
            Fail(field, ReasonCode.TextTooLong, $"The cell has {text.Length:N0} characters; the limit is {MaxTextLength:N0}.", "Shorten the text.");
            return null;
        }

        return text.IsEmpty ? null : text.ToString().Replace("\0", "", StringComparison.Ordinal);
    }

    /// <summary>Text, or null where the cell is empty or says unknown.</summary>
    public string? Word(MappedField field) => EmptyMark.Is(Span(field)) ? null : Text(field);

    /// <summary>Text that the row cannot do without.</summary>
    public string? Needed(MappedField field)
    {
        string? text = Word(field);
        if (text is null)
        {
            Missing(field);
        }

        return text;
    }

    /// <summary>The same, for texts that hardly repeat themselves: good until the next row, empty where the row is refused.</summary>
    public ReadOnlySpan<char> NeededSpan(MappedField field)
    {
        ReadOnlySpan<char> text = Span(field);
        if (text.Length > MaxTextLength || text.Contains('\0'))
        {
            return Needed(field);
        }

        if (!EmptyMark.Is(text))
        {
            return text;
        }

        Missing(field);
        return [];
    }

    /// <summary>Refuses the row for want of a field.</summary>
    public void Missing(MappedField field) => Fail(field, ReasonCode.Missing, $"The row has no {field.Name.Replace('_', ' ')}.", "Fill in the cell.");

    /// <summary>A number on a part or model, which a spreadsheet may have damaged.</summary>
    public string? Code(MappedField field, bool lesser = false) => HasCode(field, lesser) ? Text(field) : null;

    /// <summary>The same for a lesser field whose texts hardly repeat themselves: good until the next row, empty: none.</summary>
    public ReadOnlySpan<char> CodeSpan(MappedField field)
    {
        if (!HasCode(field, lesser: true))
        {
            return [];
        }

        ReadOnlySpan<char> text = Span(field);
        return text.Length > MaxTextLength || text.Contains('\0') ? Text(field) : text;
    }

    private bool HasCode(MappedField field, bool lesser)
    {
        ReadOnlySpan<char> raw = Raw(field);
        if (EmptyMark.Is(raw))
        {
            return false;
        }

        bool mapped = field.Words is { } words && words.ContainsKey(raw.ToString());
        CellForm form = field.Columns.Length == 1 ? Cells.Form(field.Columns[0]) : CellForm.Text;
        if (mapped || !(form is CellForm.DamagedNumber or CellForm.Date || DamagedCode.Is(raw)))
        {
            return true;
        }

        if (lesser)
        {
            Skip(field, ReasonCode.DamagedBySpreadsheet);
        }
        else
        {
            Fail(field, ReasonCode.DamagedBySpreadsheet, $"A spreadsheet turned the code in {place(field.Columns[0], Line)} into a number or a date.", "Type the code from the paper or the invoice, in a column formatted as text.");
        }

        return false;
    }

    /// <summary>A day. A cell that is no day refuses the row, or counts as unknown where the field is a lesser one.</summary>
    public DateOnly? Day(MappedField field, bool lesser = false)
    {
        ReadOnlySpan<char> text = Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (DateText.TryDay(text, style.Dates, out DateOnly day))
        {
            return day;
        }

        return Unusable<DateOnly>(field, lesser, ReasonCode.BadDate, "is no date in the file's date order", "Write the date as 2026-08-03.");
    }

    /// <summary>A day that the row cannot do without.</summary>
    public DateOnly NeededDay(MappedField field)
    {
        DateOnly? day = Day(field);
        if (day is null)
        {
            Missing(field);
        }

        return day ?? default;
    }

    /// <summary>A day with time; a cell that is none counts as unknown.</summary>
    public DateTime? Time(MappedField field)
    {
        ReadOnlySpan<char> text = Span(field);
        return EmptyMark.Is(text) ? null
            : DateText.TryTime(text, style.Dates, out DateTime time) ? time
            : Unusable<DateTime>(field, true, ReasonCode.BadDate, "", "");
    }

    /// <summary>An amount.</summary>
    public decimal? Money(MappedField field)
    {
        ReadOnlySpan<char> text = Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        NumberStyle numbers = IsNumberCell(field) ? NumberStyle.Point : style.Numbers;
        return MoneyText.TryRead(text, numbers, out decimal amount) ? amount
            : Unusable<decimal>(field, false, ReasonCode.BadNumber, "is no amount in the file's number style", "Write the amount as 1234.50, or set numberStyle in the map.");
    }

    /// <summary>A count, 0 or more.</summary>
    public int? Quantity(MappedField field, bool lesser = false)
    {
        ReadOnlySpan<char> text = Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        NumberStyle numbers = IsNumberCell(field) ? NumberStyle.Point : style.Numbers;
        if (!QuantityText.TryRead(text, numbers, out int count))
        {
            return Unusable<int>(field, lesser, ReasonCode.BadNumber, "is no whole number", "Write a whole number.");
        }

        return count >= 0 ? count : Unusable<int>(field, lesser, ReasonCode.OutOfRange, "is below zero", "Write a number of 0 or more.");
    }

    /// <summary>Yes or no; a cell that is neither counts as unknown.</summary>
    public bool? Flag(MappedField field)
    {
        ReadOnlySpan<char> text = Span(field);
        return text.IsEmpty ? null : YesNoText.TryRead(text, out bool yes) ? yes
            : EmptyMark.Is(text) ? null : Unusable<bool>(field, true, ReasonCode.BadNumber, "", "");
    }

    /// <summary>True when the field's cell is a number cell of a workbook, which has a point for its decimals whatever the file's style.</summary>
    public bool IsNumberCell(MappedField field) => field.Columns.Length == 1 && Cells.Form(field.Columns[0]) is CellForm.Number or CellForm.DamagedNumber;

    private T? Unusable<T>(MappedField field, bool lesser, string code, string what, string suggestion)
        where T : struct
    {
        if (lesser)
        {
            Skip(field, code);
        }
        else
        {
            string where = field.Columns.Length > 0 ? place(field.Columns[0], Line) : "the map's fixed value";
            Fail(field, code, $"The {field.Name.Replace('_', ' ')} in {where} {what}.", suggestion);
        }

        return null;
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
            Fail(field, ReasonCode.FormulaError, $"The cell {place(column, Line)} holds a failed formula.", "Mend the formula, or type its value.");
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
