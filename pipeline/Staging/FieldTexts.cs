using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The fields of a row read as texts and codes.</summary>
internal static class FieldTexts
{
    private const int MaxTextLength = 20_000;

    /// <summary>Text, or null where the cell is empty.</summary>
    public static string? Text(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        return text.Length > MaxTextLength || text.Contains('\0') ? row.FreeText(field) : text.IsEmpty ? null : text.ToString();
    }

    /// <summary>The same, for texts that hardly repeat themselves.</summary>
    public static string? FreeText(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (text.Length > MaxTextLength)
        {
            row.Fail(field, ReasonCode.TextTooLong, $"The cell has {text.Length:N0} characters; the limit is {MaxTextLength:N0}.", "Shorten the text.");
            return null;
        }

        return text.IsEmpty ? null : text.ToString().Replace("\0", "", StringComparison.Ordinal);
    }

    /// <summary>Text, or null where the cell is empty or says unknown.</summary>
    public static string? Word(this MappedRow row, MappedField field) => EmptyMark.Is(row.Span(field)) ? null : row.Text(field);

    /// <summary>True when the cell is empty or says unknown.</summary>
    public static bool IsBlank(this MappedRow row, MappedField field) => EmptyMark.Is(row.Span(field));

    /// <summary>Text that the row cannot do without.</summary>
    public static string? Needed(this MappedRow row, MappedField field)
    {
        string? text = row.Word(field);
        if (text is null)
        {
            row.Missing(field);
        }

        return text;
    }

    /// <summary>The same, for texts that hardly repeat themselves: good until the next row, empty where the row is refused.</summary>
    public static ReadOnlySpan<char> NeededSpan(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (text.Length > MaxTextLength || text.Contains('\0'))
        {
            return row.Needed(field);
        }

        if (!EmptyMark.Is(text))
        {
            return text;
        }

        row.Missing(field);
        return [];
    }

    /// <summary>Refuses the row for want of a field.</summary>
    public static void Missing(this MappedRow row, MappedField field) => row.Fail(field, ReasonCode.Missing, $"{field.Label} is blank.", "Fill in the cell.");

    /// <summary>A number on a part or model, which a spreadsheet may have damaged.</summary>
    public static string? Code(this MappedRow row, MappedField field, bool lesser = false) => HasCode(row, field, lesser) ? row.Text(field) : null;

    /// <summary>The same for a lesser field whose texts hardly repeat themselves: good until the next row, empty: none.</summary>
    public static ReadOnlySpan<char> CodeSpan(this MappedRow row, MappedField field)
    {
        if (!HasCode(row, field, lesser: true))
        {
            return [];
        }

        ReadOnlySpan<char> text = row.Span(field);
        return text.Length > MaxTextLength || text.Contains('\0') ? row.Text(field) : text;
    }

    private static bool HasCode(MappedRow row, MappedField field, bool lesser)
    {
        ReadOnlySpan<char> raw = row.Raw(field);
        if (EmptyMark.Is(raw))
        {
            return false;
        }

        bool mapped = field.Words is { } words && words.ContainsKey(raw.ToString());
        CellForm form = field.Columns.Length == 1 ? row.Cells.Form(field.Columns[0]) : CellForm.Text;
        if (mapped || !(form is CellForm.DamagedNumber or CellForm.Date || DamagedCode.Is(raw)))
        {
            return true;
        }

        if (lesser)
        {
            row.Skip(field, ReasonCode.DamagedBySpreadsheet);
        }
        else
        {
            row.Fail(field, ReasonCode.DamagedBySpreadsheet, $"A spreadsheet turned the code in {row.Place(field.Columns[0])} into a number or a date.", "Type the code from the paper or the invoice, in a column formatted as text.");
        }

        return false;
    }
}
