using System.Globalization;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>A way to read the year from a serial.</summary>
/// <param name="At">Position of its first character, from 0.</param>
/// <param name="Length">Its characters: 1, 2 or 4.</param>
/// <param name="Letters">Offset of each letter within the cycle; empty: digits.</param>
/// <param name="Cycle">Years after which a code means another year; 0: never.</param>
internal sealed record YearCode(int At, int Length, IReadOnlyDictionary<char, int> Letters, int Cycle)
{
    public const int FirstYear = 1970;
    public const int LastYear = 2060;

    /// <summary>True when the code names the year by itself, so that no counter can pass for it for long.</summary>
    public bool IsAbsolute => Length > 1;

    /// <summary>The year within the cycle; -1: not one of the codes.</summary>
    public int Offset(string serial)
    {
        if (Letters.Count > 0)
        {
            return Letters.GetValueOrDefault(serial[At], -1);
        }

        int value = 0;
        for (int i = At; i < At + Length; i++)
        {
            if (!char.IsAsciiDigit(serial[i]))
            {
                return -1;
            }

            value = (value * 10) + serial[i] - '0';
        }

        return Length == 4 && value is < FirstYear or > LastYear ? -1 : value;
    }

    /// <summary>Years that an offset can mean, from and to inside.</summary>
    public IEnumerable<int> Years(int offset, int from, int to)
    {
        if (Cycle == 0)
        {
            return offset >= from && offset <= to ? [offset] : [];
        }

        int first = from + (((offset - from) % Cycle + Cycle) % Cycle);
        return Enumerable.Range(0, to < first ? 0 : ((to - first) / Cycle) + 1).Select(k => first + (k * Cycle));
    }
}

/// <summary>How a serial may tell the time within the year.</summary>
internal enum WithinYear
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>A month.</summary>
    Month,

    /// <summary>A week of seven days, counted from 1 January or as ISO 8601 counts: both are allowed for.</summary>
    Week,

    /// <summary>An ISO 8601 week next to the calendar year, so that the days around New Year go astray.</summary>
    CalendarWeek,
}

/// <summary>A way to read the month or the week from a serial.</summary>
/// <param name="At">Position of its first character, from 0.</param>
/// <param name="Symbols">Twelve symbols for months; empty: two digits.</param>
/// <param name="Kind">What it tells.</param>
internal sealed record PeriodCode(int At, string Symbols, WithinYear Kind)
{
    public static readonly PeriodCode None = new(0, "", WithinYear.None);

    /// <summary>Symbols that stand for months, January first.</summary>
    public static readonly IReadOnlyList<string> MonthSymbols = ["123456789ABC", "123456789XYZ", "123456789OND", "1234567890AB", "ABCDEFGHIJKL", "ABCDEFGHJKLM", "ABCDEFGHJKMN"];

    public int Length => Kind == WithinYear.None ? 0 : Symbols.Length > 0 ? 1 : 2;

    /// <summary>Month from 1 to 12, week from 1 to 53; 0 where there is no such part; -1: neither.</summary>
    public int Value(string serial)
    {
        if (Kind == WithinYear.None)
        {
            return 0;
        }

        if (Symbols.Length > 0)
        {
            int month = Symbols.IndexOf(serial[At], StringComparison.Ordinal) + 1;
            return month > 0 ? month : -1;
        }

        int value = char.IsAsciiDigit(serial[At]) && char.IsAsciiDigit(serial[At + 1]) ? ((serial[At] - '0') * 10) + serial[At + 1] - '0' : -1;
        return value >= 1 && value <= (Kind == WithinYear.Month ? 12 : 53) ? value : -1;
    }

    /// <summary>The days that a value means in a year; none where the year has no such week.</summary>
    public IReadOnlyList<BuildInterval> Days(int year, int value) => Kind switch
    {
        WithinYear.None => [BuildInterval.Year(year)],
        WithinYear.Month => [BuildInterval.Month(year, value)],
        WithinYear.Week => BuildInterval.EitherWeek(year, value) is { } week ? [week] : [],
        _ => BuildInterval.CalendarWeek(year, value),
    };
}

/// <summary>A whole date code: year and what tells the time within it.</summary>
internal sealed record DateCode(YearCode Year, PeriodCode Period)
{
    /// <summary>Positions of its characters.</summary>
    public IEnumerable<int> Places => Enumerable.Range(Year.At, Year.Length).Concat(Enumerable.Range(Period.At, Period.Length));

    /// <summary>The days that the serial can mean in a range of years; null: it is not of this code's form.</summary>
    public IReadOnlyList<DaySpan>? Read(string serial, int from, int to)
    {
        int offset = Year.Offset(serial), value = Period.Value(serial);
        return offset < 0 || value < 0 ? null : [.. Year.Years(offset, from, to).SelectMany(y => Period.Days(y, value)).Select(DaySpan.Of)];
    }

    public override string ToString()
    {
        string year = Place(Year.At, Year.Length);
        return Period.Kind switch
        {
            WithinYear.None => $"year in {year}",
            WithinYear.Month => $"year in {year}, month in {Place(Period.At, Period.Length)}",
            _ => $"year in {year}, week in {Place(Period.At, Period.Length)}",
        };
    }

    private static string Place(int at, int length) => length == 1
        ? string.Create(CultureInfo.InvariantCulture, $"character {at + 1}")
        : string.Create(CultureInfo.InvariantCulture, $"characters {at + 1} to {at + length}");
}
