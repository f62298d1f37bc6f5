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
