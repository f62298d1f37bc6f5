using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads when a unit was made: a day, a month or a year, as the interval of days it can mean.</summary>
internal static class MadeOnText
{
    /// <summary>
    /// <c>2017</c>, <c>2017-05</c>, <c>05/2017</c>, <c>May 2017</c>, or any date. Years outside 1950 to 2100 are not read.
    /// </summary>
    public static bool TryRead(ReadOnlySpan<char> cell, DateOrder order, out DateOnly from, out DateOnly to)
    {
        from = to = default;
        ReadOnlySpan<char> text = cell.Trim();
        if (text.Length == 4 && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int year))
        {
            return IsYear(year) && Year(year, out from, out to);
        }

        if (DateText.TryDay(text, order, out from))
        {
            to = from;
            return IsYear(from.Year);
        }

        return TryMonth(text, out year, out int month) && IsYear(year) && Month(year, month, out from, out to);
    }

    private static bool TryMonth(ReadOnlySpan<char> text, out int year, out int month)
    {
        year = month = 0;
        int mark = text.IndexOfAny("-/. ");
        if (mark < 1)
        {
            return false;
        }

        ReadOnlySpan<char> left = text[..mark];
        ReadOnlySpan<char> right = text[(mark + 1)..].Trim();
        if (left.Length == 4 && int.TryParse(left, NumberStyles.None, CultureInfo.InvariantCulture, out year))
        {
            return int.TryParse(right, NumberStyles.None, CultureInfo.InvariantCulture, out month) && month is >= 1 and <= 12;
        }

        if (right.Length != 4 || !int.TryParse(right, NumberStyles.None, CultureInfo.InvariantCulture, out year))
        {
            return false;
        }

        if (int.TryParse(left, NumberStyles.None, CultureInfo.InvariantCulture, out month))
        {
            return month is >= 1 and <= 12;
        }

        // The day is only there to let the date reader find the month's name.
        if (DateText.TryDay($"1 {left} {year}", DateOrder.DayFirst, out DateOnly day))
        {
            month = day.Month;
            return true;
        }

        return false;
    }

    private static bool IsYear(int year) => year is >= 1950 and <= 2100;

    private static bool Year(int year, out DateOnly from, out DateOnly to)
    {
        from = new DateOnly(year, 1, 1);
        to = new DateOnly(year, 12, 31);
        return true;
    }

    private static bool Month(int year, int month, out DateOnly from, out DateOnly to)
    {
        from = new DateOnly(year, month, 1);
        to = from.AddMonths(1).AddDays(-1);
        return true;
    }
}
