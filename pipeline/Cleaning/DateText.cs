using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>
/// Reads a date, with or without a time: <c>2026-08-03</c>, <c>03/08/2026</c>, <c>3.8.26</c>, <c>3 Aug 2026</c>,
/// <c>Aug 3, 2026</c>, <c>20260803</c>, and any of these followed by a time, a zone or both. Years of two digits mean
/// 1970 to 2069. Years outside 1900 to 2100 are no dates.
/// </summary>
internal static class DateText
{
    private static readonly string[] Weekdays = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>The day as written on the wall where it was written: a zone does not move it.</summary>
    public static bool TryDay(ReadOnlySpan<char> cell, DateOrder order, out DateOnly day) => TrySplit(cell.Trim(), order, out day, out _);

    /// <summary>
    /// Day and time; without a time midnight. A time with a zone becomes UTC, one without stays as it is.
    /// </summary>
    public static bool TryTime(ReadOnlySpan<char> cell, DateOrder order, out DateTime time)
    {
        time = default;
        if (!TrySplit(cell.Trim(), order, out DateOnly day, out ReadOnlySpan<char> rest))
        {
            return false;
        }

        rest = rest.Trim();
        if (rest.IsEmpty)
        {
            time = day.ToDateTime(TimeOnly.MinValue);
            return true;
        }

        if (!ClockText.TryRead(rest, out TimeSpan clock, out TimeSpan? zone))
        {
            return false;
        }

        time = day.ToDateTime(TimeOnly.MinValue) + clock - (zone ?? TimeSpan.Zero);
        return true;
    }

    /// <summary>The three numbers of a date written with digits only, where order matters; for deciding the order.</summary>
    public static bool TryNumbers(ReadOnlySpan<char> cell, out int first, out int second, out int third)
    {
        third = second = 0;
        cell = cell.Trim();
        return TakeNumber(ref cell, out first, out int digits) && digits <= 2 && TakeMark(ref cell, out char mark)
            && TakeNumber(ref cell, out second, out digits) && digits <= 2 && TakeMark(ref cell, out char again) && mark == again
            && TakeNumber(ref cell, out third, out digits) && digits is 2 or 4;
    }

    private static bool TrySplit(ReadOnlySpan<char> text, DateOrder order, out DateOnly day, out ReadOnlySpan<char> rest)
    {
        day = default;
        rest = text;
        text = SkipWeekday(text);
        if (text.IsEmpty)
        {
            return false;
        }

        bool read = char.IsAsciiDigit(text[0]) ? FromDigit(text, order, out day, out rest) : FromMonthName(text, out day, out rest);
        return read && (rest.IsEmpty || rest[0] is ' ' or 'T' or 't' or ',');
    }

    private static bool FromDigit(ReadOnlySpan<char> text, DateOrder order, out DateOnly day, out ReadOnlySpan<char> rest)
    {
        day = default;
        rest = text;
        TakeNumber(ref rest, out int a, out int aDigits);
        if (aDigits == 8)
        {
            return Make(a / 10000, a / 100 % 100, a % 100, 4, out day);
        }

        if (aDigits > 4 || rest.IsEmpty)
        {
            return false;
        }

        rest = SkipOrdinal(rest, aDigits);
        char mark = rest[0];
        ReadOnlySpan<char> afterMark = rest[1..].TrimStart(' ');
        if (mark is '-' or '/' or '.' or ' ' or ',' && !afterMark.IsEmpty && char.IsAsciiLetter(afterMark[0]))
        {
            return DayThenName(a, aDigits, afterMark, out day, out rest);
        }

        if (mark is not ('-' or '/' or '.') || !TakeMark(ref rest, out _) || !TakeNumber(ref rest, out int b, out int bDigits) || bDigits > 2
            || rest.IsEmpty || rest[0] != mark || !TakeMark(ref rest, out _) || !TakeNumber(ref rest, out int c, out int cDigits))
        {
            return false;
        }

        if (aDigits == 4)
        {
            return cDigits <= 2 && Make(a, b, c, 4, out day);
        }

        return order switch
        {
            DateOrder.YearFirst when cDigits <= 2 => Make(a, b, c, aDigits, out day),
            DateOrder.MonthFirst => Make(c, a, b, cDigits, out day),
            _ => Make(c, b, a, cDigits, out day),
        };
    }

    private static bool DayThenName(int day, int digits, ReadOnlySpan<char> text, out DateOnly result, out ReadOnlySpan<char> rest)
    {
        result = default;
        rest = text;
        if (digits > 2 || !TakeMonth(ref rest, out int month))
        {
            return false;
        }

        rest = rest.TrimStart(" -/.,'");
        return TakeNumber(ref rest, out int year, out int yearDigits) && Make(year, month, day, yearDigits, out result);
    }

    private static bool FromMonthName(ReadOnlySpan<char> text, out DateOnly result, out ReadOnlySpan<char> rest)
    {
        result = default;
        rest = text;
        if (!TakeMonth(ref rest, out int month))
        {
            return false;
        }

        rest = rest.TrimStart(" -/.");
        if (!TakeNumber(ref rest, out int day, out int digits) || digits > 2)
        {
            return false;
        }

        rest = SkipOrdinal(rest, digits).TrimStart(" -/,'");
        return TakeNumber(ref rest, out int year, out int yearDigits) && Make(year, month, day, yearDigits, out result);
    }

    private static bool Make(int year, int month, int day, int yearDigits, out DateOnly result)
    {
        result = default;
        year = yearDigits == 2 ? (year < 70 ? 2000 + year : 1900 + year) : year;
        if (yearDigits is not (2 or 4) || year is < 1900 or > 2100 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month))
        {
            return false;
        }

        result = new DateOnly(year, month, day);
        return true;
    }

    private static bool TakeNumber(ref ReadOnlySpan<char> text, out int value, out int digits)
    {
        int end = text.IndexOfAnyExceptInRange('0', '9');
        digits = end < 0 ? text.Length : end;
        value = 0;
        if (digits is 0 or > 8)
        {
            return false;
        }

        value = int.Parse(text[..digits], NumberStyles.None, CultureInfo.InvariantCulture);
        text = text[digits..];
        return true;
    }

    private static bool TakeMark(ref ReadOnlySpan<char> text, out char mark)
    {
        mark = text.IsEmpty ? '\0' : text[0];
        if (mark is not ('-' or '/' or '.'))
        {
            return false;
        }

        text = text[1..].TrimStart(' ');
        return true;
    }

    private static bool TakeMonth(ref ReadOnlySpan<char> text, out int month)
    {
        month = 0;
        int end = 0;
        while (end < text.Length && char.IsAsciiLetter(text[end]))
        {
            end++;
        }

        if (end < 3)
        {
            return false;
        }

        for (int i = 0; i < Months.Length; i++)
        {
            if (text.StartsWith(Months[i], StringComparison.OrdinalIgnoreCase))
            {
                month = i + 1;
                text = text[end..];
                return IsMonthWord(i, text, end);
            }
        }

        return false;
    }

    private static bool IsMonthWord(int index, ReadOnlySpan<char> after, int length) =>
        length == 3 || length == CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(index + 1).Length || (index == 8 && length == 4) || (after.StartsWith(".") && length == 4);

    private static ReadOnlySpan<char> SkipWeekday(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty || !char.IsAsciiLetter(text[0]))
        {
            return text;
        }

        foreach (string day in Weekdays)
        {
            if (text.StartsWith(day, StringComparison.OrdinalIgnoreCase))
            {
                int end = text.IndexOfAny(' ', ',');
                return end < 0 ? text : text[end..].TrimStart(" ,");
            }
        }

        return text;
    }

    private static ReadOnlySpan<char> SkipOrdinal(ReadOnlySpan<char> text, int digits) =>
        digits <= 2 && text.Length > 2 && (text.StartsWith("st", StringComparison.OrdinalIgnoreCase) || text.StartsWith("nd", StringComparison.OrdinalIgnoreCase)
            || text.StartsWith("rd", StringComparison.OrdinalIgnoreCase) || text.StartsWith("th", StringComparison.OrdinalIgnoreCase)) ? text[2..] : text;
}
