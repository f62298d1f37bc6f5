using System.Globalization;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Review;

/// <summary>
/// What a person typed into a cell, told from what a spreadsheet made of it: "0052105" that became 52105, "3-12" that became
/// a day, "12E5" that became 1200000.
/// </summary>
internal static class SheetAnswer
{
    private const string DayFormat = "yyyy-MM-dd";
    private static readonly string[] Months = [.. CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames.Take(12)];

    /// <summary>The one text that a spreadsheet turns into this cell, or null if none of them or several are.</summary>
    /// <param name="cell">Text of the cell as it is read.</param>
    /// <param name="form">What the workbook says it is; anything but text.</param>
    /// <param name="texts">Texts that may have been typed.</param>
    public static string? Restore(string cell, CellForm form, IEnumerable<string> texts)
    {
        string[] fitting = [.. texts.Where(t => t.Length > 0 && Becomes(t.Trim(), cell, form)).Distinct(StringComparer.Ordinal)];
        return fitting.Length == 1 ? fitting[0] : null;
    }

    /// <summary>The month of a cell that a spreadsheet took for a day, such as <c>2017-04</c>, or null if it is no day.</summary>
    public static string? Month(string cell, CellForm form) => form == CellForm.Date && Day(cell) is { } day ? day.ToString("yyyy-MM", CultureInfo.InvariantCulture) : null;

    private static bool Becomes(string text, string cell, CellForm form) => form switch
    {
        CellForm.Number or CellForm.DamagedNumber => SameNumber(text, cell),
        CellForm.Date => Day(cell) is { } day && IsWritten(text, day),
        CellForm.Flag => text.Equals(cell, StringComparison.OrdinalIgnoreCase),
        _ => false,
    };

    // A spreadsheet keeps fifteen digits.
    private static bool SameNumber(string text, string cell) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double typed) && double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double kept)
        && typed.ToString("E14", CultureInfo.InvariantCulture) == kept.ToString("E14", CultureInfo.InvariantCulture);

    private static DateOnly? Day(string cell) => DateOnly.TryParseExact(cell, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    // Day and month in either order, month and year, or all three.
    private static bool IsWritten(string text, DateOnly day)
    {
        int?[] parts = [.. text.Split('-', '/', '.', ' ').Select(Number)];
        return parts switch
        {
            [{ } a, { } b] => (Is(a, day.Day) && Is(b, day.Month)) || (Is(a, day.Month) && Is(b, day.Day)) || (day.Day == 1 && ((Is(a, day.Month) && IsYear(b)) || (Is(b, day.Month) && IsYear(a)))),
            [{ } a, { } b, { } c] => (IsYear(c) && ((Is(a, day.Day) && Is(b, day.Month)) || (Is(a, day.Month) && Is(b, day.Day)))) || (IsYear(a) && Is(b, day.Month) && Is(c, day.Day)),
            _ => false,
        };

        static bool Is(int part, int number) => part == number;

        bool IsYear(int part) => part == day.Year || (part < 100 && part == day.Year % 100);
    }

    private static int? Number(string part)
    {
        int month = Array.FindIndex(Months, m => m.Equals(part, StringComparison.OrdinalIgnoreCase));
        return month >= 0 ? month + 1 : int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
    }
}
