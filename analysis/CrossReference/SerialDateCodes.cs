using System.Collections.Concurrent;
using System.Globalization;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>What the symbols of one rule's date code mean. The same code is read once: serials have few of them.</summary>
/// <param name="years">One symbol a year, the first standing for <paramref name="firstYear"/>; empty: the year is written in digits.</param>
/// <param name="months">One symbol a month, from January; empty: the month is written in digits.</param>
/// <param name="firstYear">First year the code was used; no candidate lies before it.</param>
/// <param name="cycleYears">The letters start again after so many years; digits repeat after 10 or 100, four of them never.</param>
/// <param name="weeks">How weeks are counted.</param>
internal sealed class SerialDateCodes(string years, string months, int firstYear, int cycleYears, WeekCount weeks)
{
    private const int MostKept = 20_000;
    private const int LongestKept = 24;
    private readonly ConcurrentDictionary<string, SerialDateReading> _known = new(StringComparer.Ordinal);

    /// <summary>Reads a code.</summary>
    /// <param name="code">The code.</param>
    /// <param name="notAfter">No later build date is possible.</param>
    public SerialDateReading Read(SerialDateCode code, DateOnly notAfter)
    {
        int length = code.Year.Length + code.Week.Length + code.Month.Length;
        if (length > LongestKept)
        {
            return ReadAnew(code, notAfter);
        }

        Span<char> key = stackalloc char[LongestKept + 5];
        key[0] = (char)(notAfter.DayNumber >> 16);
        key[1] = (char)notAfter.DayNumber;
        key[2] = (char)code.Year.Length;
        key[3] = (char)(code.HasWeek ? code.Week.Length : char.MaxValue);
        key[4] = (char)(code.HasMonth ? code.Month.Length : char.MaxValue);
        code.Year.CopyTo(key[5..]);
        code.Week.CopyTo(key[(5 + code.Year.Length)..]);
        code.Month.CopyTo(key[(5 + code.Year.Length + code.Week.Length)..]);
        key = key[..(5 + length)];
        if (_known.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(key, out SerialDateReading? known))
        {
            return known;
        }

        SerialDateReading reading = ReadAnew(code, notAfter);
        if (_known.Count < MostKept)
        {
            _known.TryAdd(key.ToString(), reading);
        }

        return reading;
    }

    /// <summary>A whole number written in digits alone, or null if it is none.</summary>
    public static int? Number(ReadOnlySpan<char> text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? value : null;

    private SerialDateReading ReadAnew(SerialDateCode code, DateOnly notAfter)
    {
        (int offset, int cycle) = YearOffset(code.Year);
        if (offset < 0)
        {
            return SerialDateReading.Broken($"year code '{code.Year}' is not one of the rule's");
        }

        var candidates = new List<BuildInterval>();
        for (int year = firstYear + offset; year <= notAfter.Year; year += cycle)
        {
            candidates.AddRange(Within(year, code).Where(built => built.From <= notAfter));

            if (cycle == 0)
            {
                break;
            }
        }

        // the code alone: a whole serial belongs in no table
        return candidates.Count > 0
            ? new SerialDateReading(candidates, null)
            : SerialDateReading.Broken($"date code '{code.Year}{code.Week}{code.Month}' names no week, month or year before {notAfter:yyyy-MM-dd}");
    }

    private IReadOnlyList<BuildInterval> Within(int year, SerialDateCode code)
    {
        if (code.HasWeek)
        {
            return Number(code.Week) is not { } week ? [] : weeks switch
            {
                WeekCount.January => List(BuildInterval.WeekSinceJanuary(year, week)),
                WeekCount.Either => List(BuildInterval.EitherWeek(year, week)),
                WeekCount.Calendar => BuildInterval.CalendarWeek(year, week),
                _ => List(BuildInterval.IsoWeek(year, week)),
            };
        }

        if (code.HasMonth)
        {
            int? m = months.Length > 0 ? months.AsSpan().IndexOf(code.Month) + 1 : Number(code.Month);
            return m is >= 1 and <= 12 ? [BuildInterval.Month(year, m.Value)] : [];
        }

        return [BuildInterval.Year(year)];

        static IReadOnlyList<BuildInterval> List(BuildInterval? interval) => interval is null ? [] : [interval];
    }

    private (int Offset, int Cycle) YearOffset(ReadOnlySpan<char> symbol)
    {
        if (years.Length > 0)
        {
            return (symbol.Length == 1 ? years.IndexOf(symbol[0], StringComparison.Ordinal) : -1, cycleYears);
        }

        if (Number(symbol) is not { } value)
        {
            return (-1, 0);
        }

        int cycle = symbol.Length >= 4 ? 0 : (int)Math.Pow(10, symbol.Length);
        return cycle == 0 ? (value - firstYear, 0) : (((value - firstYear) % cycle + cycle) % cycle, cycle);
    }
}

/// <summary>How a maker counts weeks.</summary>
internal enum WeekCount
{
    /// <summary>ISO 8601: Monday to Sunday, of the week's own year.</summary>
    Iso,

    /// <summary>Seven days each from 1 January.</summary>
    January,

    /// <summary>One of these two, it is not known which: the days of both.</summary>
    Either,

    /// <summary>ISO 8601 weeks beside the calendar year.</summary>
    Calendar,
}

/// <summary>The parts of a date code in a serial.</summary>
internal readonly ref struct SerialDateCode(ReadOnlySpan<char> year, ReadOnlySpan<char> week, bool hasWeek, ReadOnlySpan<char> month, bool hasMonth)
{
    public ReadOnlySpan<char> Year { get; } = year;

    public ReadOnlySpan<char> Week { get; } = week;

    public bool HasWeek { get; } = hasWeek;

    public ReadOnlySpan<char> Month { get; } = month;

    public bool HasMonth { get; } = hasMonth;
}
