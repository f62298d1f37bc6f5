using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads a plain number in a file's style.</summary>
internal static class NumberText
{
    private const int MaxLength = 40;
    private const int ShortDigits = 9;

    /// <summary>
    /// Digits with an optional sign, grouping marks (the other mark, blanks, apostrophes) in groups of three, and the
    /// style's decimal mark. Anything else is no number.
    /// </summary>
    public static bool TryRead(ReadOnlySpan<char> text, NumberStyle style, out decimal value)
    {
        value = 0;
        text = text.Trim();
        if (text.IsEmpty || text.Length > MaxLength)
        {
            return false;
        }

        if (text.Length <= ShortDigits && !text.ContainsAnyExceptInRange('0', '9'))
        {
            value = int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
            return true;
        }

        char decimalMark = style == NumberStyle.Point ? '.' : ',';
        char groupMark = style == NumberStyle.Point ? ',' : '.';
        Span<char> plain = stackalloc char[MaxLength + 1];
        int n = 0;
        int sinceGroup = -1;
        bool decimals = false;
        bool digit = false;
        foreach (char c in text)
        {
            if (char.IsAsciiDigit(c))
            {
                digit = true;
                sinceGroup += sinceGroup >= 0 && !decimals ? 1 : 0;
                plain[n++] = c;
            }
            else if (c == decimalMark && !decimals)
            {
                if (sinceGroup is not (-1 or 3))
                {
                    return false;
                }

                decimals = true;
                plain[n++] = '.';
            }
            else if ((c == groupMark || c is ' ' or '\u00a0' or '\u202f' or '\'' or '\u2019') && digit && !decimals && sinceGroup is -1 or 3)
            {
                sinceGroup = 0;
            }
            else if (c is '-' or '+' or '\u2212' && n == 0)
            {
                plain[n++] = c == '+' ? '+' : '-';
            }
            else
            {
                return false;
            }
        }

        return digit && (decimals || sinceGroup is -1 or 3)
            && decimal.TryParse(plain[..n], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }
}

/// <summary>Reads a count: <c>2</c>, <c>2.0</c>, <c>x2</c>, <c>2 pcs</c>, <c>2,00</c>.</summary>
internal static class QuantityText
{
    private static readonly string[] Units = ["pieces", "piece", "pcs", "pc", "ea", "each", "units", "unit", "off", "st", "x", "no"];

    /// <summary>Reads a whole number. Parts of a piece are not read.</summary>
    public static bool TryRead(ReadOnlySpan<char> cell, NumberStyle style, out int count)
    {
        count = 0;
        ReadOnlySpan<char> text = cell.Trim().TrimStart("xX*\u00d7 ").TrimEnd(". ");
        foreach (string unit in Units)
        {
            if (text.Length > unit.Length && text.EndsWith(unit, StringComparison.OrdinalIgnoreCase) && !char.IsLetter(text[^(unit.Length + 1)]))
            {
                text = text[..^unit.Length].TrimEnd();
                break;
            }
        }

        if (!NumberText.TryRead(text, style, out decimal value)
            && !NumberText.TryRead(text, style == NumberStyle.Point ? NumberStyle.Comma : NumberStyle.Point, out value))
        {
            return false;
        }

        if (value != decimal.Truncate(value) || Math.Abs(value) > int.MaxValue)
        {
            return false;
        }

        count = (int)value;
        return true;
    }
}
