using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>
/// Reads a date, with or without a time: <c>2026-08-03</c>, <c>03/08/2026</c>, <c>3.8.26</c>, <c>3 Aug 2026</c>,
/// <c>Aug 3, 2026</c>, <c>20260803</c>, and any of these after a weekday and before a time, a zone or both. Months and
/// weekdays may be in any language of <see cref="CalendarWords"/>. Years of two digits mean 1970 to 2069. Years outside
/// 1900 to 2100 are no dates.
/// </summary>
internal static class DateText
{
    private const int MostDaysLater = 183;

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

    /// <summary>
    /// A day written without its year, <c>16/12</c> or <c>16. Dez.</c>: the first such day from another day on. One more than
    /// half a year later is more likely a slip, and is not read.
    /// </summary>
    public static bool TryDayFrom(ReadOnlySpan<char> cell, DateOrder order, DateOnly earliest, out DateOnly day)
    {
        day = default;
        ReadOnlySpan<char> text = AfterWeekday(cell.Trim());
        if (!TakeNumber(ref text, out int first, out int digits) || digits > 2)
        {
            return false;
        }

        text = text.TrimStart(" -/.");
        bool named = TakeMonth(ref text, out int second);
        if ((!named && (!TakeNumber(ref text, out second, out digits) || digits > 2)) || !text.Trim('.').IsEmpty)
        {
            return false;
        }

        (int month, int dayOfMonth) = !named && order != DateOrder.DayFirst ? (first, second) : (second, first);
        return ((Make(earliest.Year, month, dayOfMonth, 4, out day) && day >= earliest) || Make(earliest.Year + 1, month, dayOfMonth, 4, out day))
            && day.DayNumber - earliest.DayNumber <= MostDaysLater;
    }

    /// <summary>The three numbers of a date written with digits only, where order matters; for deciding the order.</summary>
    public static bool TryNumbers(ReadOnlySpan<char> cell, out int first, out int second, out int third)
    {
        third = second = 0;
        cell = AfterWeekday(cell.Trim());
        return TakeNumber(ref cell, out first, out int digits) && digits <= 2 && TakeMark(ref cell, out char mark)
            && TakeNumber(ref cell, out second, out digits) && digits <= 2 && TakeMark(ref cell, out char again) && mark == again
            && TakeNumber(ref cell, out third, out digits) && digits is 2 or 4;
    }

    private static bool TrySplit(ReadOnlySpan<char> text, DateOrder order, out DateOnly day, out ReadOnlySpan<char> rest)
    {
        if (TryRead(text, order, out day, out rest))
        {
            return true;
        }

        // "mar" is a month and a weekday: what stands after it decides.
        ReadOnlySpan<char> after = AfterWeekday(text);
        return after.Length < text.Length && TryRead(after, order, out day, out rest);
    }

    private static bool TryRead(ReadOnlySpan<char> text, DateOrder order, out DateOnly day, out ReadOnlySpan<char> rest)
    {
        day = default;
        rest = text;
        return !text.IsEmpty && (char.IsAsciiDigit(text[0]) ? FromDigit(text, order, out day, out rest) : FromMonthName(text, out day, out rest))
            && (rest.IsEmpty || rest[0] is ' ' or 'T' or 't' or ',');
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
        if (mark is '-' or '/' or '.' or ' ' or ',' && !afterMark.IsEmpty && char.IsLetter(afterMark[0]))
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
        SkipOf(ref rest);
        if (digits > 2 || !TakeMonth(ref rest, out int month))
        {
            return false;
        }

        rest = rest.TrimStart(" -/.,'");
        SkipOf(ref rest);
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
        ReadOnlySpan<char> word = FirstWord(text);
        month = CalendarWords.Month(word);
        if (month == 0)
        {
            return false;
        }

        text = text[word.Length..];
        return true;
    }

    private static ReadOnlySpan<char> AfterWeekday(ReadOnlySpan<char> text)
    {
        ReadOnlySpan<char> word = FirstWord(text);
        return !word.IsEmpty && CalendarWords.IsWeekday(word) ? text[word.Length..].TrimStart(" ,.") : text;
    }

    // 3 de marzo de 2026
    private static void SkipOf(ref ReadOnlySpan<char> text)
    {
        foreach (string word in (ReadOnlySpan<string>)["de ", "del "])
        {
            if (text.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                text = text[word.Length..].TrimStart(' ');
            }
        }
    }

    private static ReadOnlySpan<char> FirstWord(ReadOnlySpan<char> text)
    {
        int end = 0;
        while (end < text.Length && char.IsLetter(text[end]))
        {
            end++;
        }

        return text[..end];
    }

    private static ReadOnlySpan<char> SkipOrdinal(ReadOnlySpan<char> text, int digits)
    {
        if (digits <= 2)
        {
            foreach (string ending in (ReadOnlySpan<string>)["st", "nd", "rd", "th", "er", "\u00ba", "\u00b0"])
            {
                if (text.Length > ending.Length && text.StartsWith(ending, StringComparison.OrdinalIgnoreCase))
                {
                    return text[ending.Length..];
                }
            }
        }

        return text;
    }
}
