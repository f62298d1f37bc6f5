using System.Globalization;
using System.Text;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>Writes a learned date code as a line of the shop's table of date codes.</summary>
internal static class LearnedRuleText
{
    private const int LongCycle = 20;
    private const double OldestMissed = 0.01;

    /// <summary>The rule's cells.</summary>
    /// <param name="code">The code.</param>
    /// <param name="brand">Its brand.</param>
    /// <param name="told">The serials behind it.</param>
    /// <param name="from">First year that their dates allow.</param>
    /// <param name="to">Last such year.</param>
    /// <param name="fewestFixed">A character that is the same in so many serials belongs to their form.</param>
    public static SerialDateRuleText Write(DateCode code, string brand, IReadOnlyList<DateEvidence> told, int from, int to, int fewestFixed)
    {
        int[] years = [.. told.Select(t => BuildYear(code, t, from, to)).OfType<int>().Order()];
        bool cycles = code.Year.Cycle is > 0 and < 100;
        int? first = !cycles || years.Length == 0 ? null : FirstYear(code.Year.Cycle, years);
        bool month = code.Period.Kind == WithinYear.Month, week = code.Period.Kind is WithinYear.Week or WithinYear.CalendarWeek;
        return new SerialDateRuleText(
            brand,
            Pattern(code, told, fewestFixed),
            code.Year.Letters.Count > 0 ? Letters(code.Year, first ?? from) : null,
            first?.ToString(CultureInfo.InvariantCulture),
            code.Year.Letters.Count > 0 ? code.Year.Cycle.ToString(CultureInfo.InvariantCulture) : null,
            month && code.Period.Symbols.Length > 0 ? code.Period.Symbols : null,
            week ? (code.Period.Kind == WithinYear.Week ? "either" : "calendar") : null);
    }

    private static int? BuildYear(DateCode code, DateEvidence told, int from, int to)
    {
        DaySpan[] days = [.. (code.Read(told.Serial, from, to) ?? []).Where(d => told.Fits(d))];
        return days.Length == 0 ? null : DateOnly.FromDayNumber(days.MaxBy(told.Chance).From).Year;
    }

    // Of n appliances drawn alike, one more is older than all of them once in n + 1 times; the years below the oldest shrink
    // with n. A short cycle leaves the decade open instead, for an appliance may well be a cycle older than those with dates.
    private static int FirstYear(int cycle, int[] years) => cycle < LongCycle
        ? years[0] - cycle
        : years[0] - (int)Math.Ceiling(Math.Log(1 / OldestMissed) * (years[^1] - years[0]) / years.Length);

    // One symbol a year from the first; a year whose letter no serial shows gets a symbol that the pattern does not let through.
    private static string Letters(YearCode year, int first)
    {
        var byOffset = year.Letters.ToDictionary(l => l.Value, l => l.Key);
        var spare = new Queue<char>("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ".Where(c => !year.Letters.ContainsKey(c)));
        return string.Concat(Enumerable.Range(first, year.Cycle).Select(y => byOffset.TryGetValue(y % year.Cycle, out char letter) ? letter : spare.Dequeue()));
    }

    private static string Pattern(DateCode code, IReadOnlyList<DateEvidence> told, int fewestFixed)
    {
        int length = told[0].Serial.Length;
        var text = new StringBuilder("^");
        for (int at = 0; at < length;)
        {
            bool year = at == code.Year.At, period = code.Period.Length > 0 && at == code.Period.At;
            int end = year ? at + code.Year.Length : period ? at + code.Period.Length : at + 1;
            text.Append(year ? "(?<year>" : period ? (code.Period.Kind == WithinYear.Month ? "(?<month>" : "(?<week>") : "");
            for (; at < end; at++)
            {
                text.Append(year && code.Year.Letters.Count > 0 ? $"[{string.Concat(code.Year.Letters.Keys.Order())}]"
                    : period && code.Period.Symbols.Length > 0 ? $"[{Allowed(code.Period.Symbols, told[0].Serial[at])}]"
                    : !year && !period && told.Count >= fewestFixed && told.All(t => t.Serial[at] == told[0].Serial[at]) ? told[0].Serial[at].ToString()
                    : char.IsAsciiDigit(told[0].Serial[at]) ? "\\d" : "[A-Z]");
            }

            text.Append(year || period ? ")" : "");
        }

        return text.Append('$').ToString();
    }

    // Months of these serials are all letters or all digits.
    private static string Allowed(string symbols, char like) => string.Concat(symbols.Where(s => char.IsAsciiDigit(s) == char.IsAsciiDigit(like)).Order());
}
