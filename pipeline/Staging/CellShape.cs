namespace PartsSignal.Pipeline.Staging;

/// <summary>What a cell looks like, whatever its column.</summary>
internal enum CellShape
{
    /// <summary>Nothing, or blanks.</summary>
    Blank,

    /// <summary>Three groups of digits with the same separator, perhaps with a time behind.</summary>
    Date,

    /// <summary>Digits with a decimal mark or a currency sign.</summary>
    Amount,

    /// <summary>Digits alone.</summary>
    Whole,

    /// <summary>Letters and digits without a blank.</summary>
    Code,

    /// <summary>Letters without a blank.</summary>
    Word,

    /// <summary>Letters with a blank between.</summary>
    Phrase,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>Tells the shape of a cell.</summary>
internal static class CellShapes
{
    /// <summary>How many shapes there are.</summary>
    public const int Count = (int)CellShape.Other + 1;

    /// <summary>The shape of a cell.</summary>
    public static CellShape Of(ReadOnlySpan<char> cell)
    {
        ReadOnlySpan<char> text = cell.Trim();
        if (text.IsEmpty)
        {
            return CellShape.Blank;
        }

        bool letters = false, digits = false, blanks = false;
        foreach (char c in text)
        {
            letters |= char.IsLetter(c);
            digits |= char.IsAsciiDigit(c);
            blanks |= char.IsWhiteSpace(c);
        }

        return letters ? (blanks ? CellShape.Phrase : digits ? CellShape.Code : CellShape.Word)
            : !digits ? CellShape.Other
            : !text.ContainsAnyExceptInRange('0', '9') ? CellShape.Whole
            : IsDate(text) ? CellShape.Date
            : IsAmount(text) ? CellShape.Amount
            : CellShape.Other;
    }

    private static bool IsDate(ReadOnlySpan<char> text)
    {
        int space = text.IndexOfAny(' ', 'T');
        ReadOnlySpan<char> day = space > 0 && text[space..].Contains(':') ? text[..space] : text;
        int first = day.IndexOfAny('-', '/', '.');
        if (first is < 1 or > 4)
        {
            return false;
        }

        ReadOnlySpan<char> rest = day[(first + 1)..];
        int second = rest.IndexOf(day[first]);
        ReadOnlySpan<char> last = second < 0 ? [] : rest[(second + 1)..].TrimEnd('.');
        return second is 1 or 2 && last.Length is 1 or 2 or 4 && (first <= 2 || last.Length <= 2)
            && !day[..first].ContainsAnyExceptInRange('0', '9') && !rest[..second].ContainsAnyExceptInRange('0', '9') && !last.ContainsAnyExceptInRange('0', '9');
    }

    // A sign of money, or two decimals: 12.50, 1.234,50, $ 12.
    private static bool IsAmount(ReadOnlySpan<char> text)
    {
        ReadOnlySpan<char> number = text.Trim("$\u00a3\u20ac \u00a0-+");
        if (number.IsEmpty || number.ContainsAnyExcept("0123456789.,' \u00a0"))
        {
            return false;
        }

        int mark = number.LastIndexOfAny('.', ',');
        return text.ContainsAny("$\u00a3\u20ac") || (mark > 0 && number.Length - mark is 2 or 3 && !number[(mark + 1)..].ContainsAnyExceptInRange('0', '9') && !HasTwo(number, number[mark]));
    }

    private static bool HasTwo(ReadOnlySpan<char> number, char mark) => number.Count(mark) > 1;
}
