using System.Globalization;
using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Headers that name a month: <c>Jan 2025</c>, <c>JAN96</c>, <c>2025-01</c>, <c>01/2025</c>, <c>Bestand Januar 2025</c>.</summary>
internal static class MonthHeaders
{
    /// <summary>Fewest columns of months that make a group.</summary>
    public const int Fewest = 3;

    // Two digits below it are years of this century.
    private const int TwoDigitPivot = 70;

    /// <summary>The first day of the month that a header names, and its other words; null if it names none with its year.</summary>
    public static (DateOnly FirstDay, string Stem)? Read(string header)
    {
        string[] words = [.. PlainHeader.Words(header)];
        int[] years = [.. words.Index().Where(w => w.Item.Length == 4 && Number(w.Item) is >= 1950 and <= 2100).Select(w => w.Index)];
        int named = Array.FindIndex(words, w => CalendarWords.Month(w) > 0);
        int[] numbers = [.. words.Index().Where(w => char.IsAsciiDigit(w.Item[0]) && !years.Contains(w.Index)).Select(w => w.Index)];
        (int year, int month) = (years, named, numbers) switch
        {
            ([var y], >= 0, []) => (y, named),
            ([], >= 0, [var y]) when y == named + 1 && words[y].Length == 2 => (y, named),
            ([var y], < 0, [var m]) when Math.Abs(y - m) == 1 && words[m].Length <= 2 && Number(words[m]) is >= 1 and <= 12 => (y, m),
            _ => (-1, -1),
        };
        if (year < 0)
        {
            return null;
        }

        int inYear = Number(words[year])!.Value;
        int full = inYear >= 100 ? inYear : inYear + (inYear < TwoDigitPivot ? 2000 : 1900);
        int of = named >= 0 ? CalendarWords.Month(words[named]) : Number(words[month])!.Value;
        return (new DateOnly(full, of, 1), string.Join(' ', words.Where((_, i) => i != year && i != month)));
    }

    /// <summary>True for the name of a month.</summary>
    /// <param name="word">A word in small letters, without accents.</param>
    public static bool IsMonth(string word) => CalendarWords.Month(word) > 0;

    /// <summary>True when every header names a month, each another one.</summary>
    public static bool AreMonths(IReadOnlyList<string> headers) =>
        headers.Count >= Fewest && headers.Select(Read).ToArray() is var read && Array.TrueForAll(read, m => m is not null) && read.Distinct().Count() == headers.Count;

    private static int? Number(string word) => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : null;
}
