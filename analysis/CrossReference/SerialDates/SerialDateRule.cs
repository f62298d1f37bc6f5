using System.Globalization;
using System.Text.RegularExpressions;

namespace PartsSignal.Analysis.CrossReference.SerialDates;

/// <summary>
/// How one brand writes the build date into its serial numbers. The pattern's named groups say where:
/// <c>year</c> (needed), and <c>month</c> or <c>week</c> where the code has them.
/// </summary>
public sealed record SerialDateRule
{
    private const int DigitsSince = 1970;
    private readonly Regex _pattern;
    private readonly bool _weeksSinceJanuary;

    private SerialDateRule(SerialDateRuleText text, Regex pattern, int firstYear, int cycleYears)
    {
        Brand = CompactKey.Of(text.Brand);
        YearAlphabet = Symbols(text.YearLetters);
        MonthAlphabet = Symbols(text.MonthLetters);
        FirstYear = firstYear;
        CycleYears = cycleYears;
        _weeksSinceJanuary = IsJanuary(text.Weeks);
        _pattern = pattern;
    }

    /// <summary>Compact key of the brand; empty: any brand.</summary>
    public string Brand { get; }

    /// <summary>One symbol a year, the first standing for <see cref="FirstYear"/>; empty: the year is written in digits.</summary>
    public string YearAlphabet { get; }

    /// <summary>One symbol a month, from January; empty: the month is written in digits.</summary>
    public string MonthAlphabet { get; }

    /// <summary>First year the code was used; no candidate lies before it.</summary>
    public int FirstYear { get; }

    /// <summary>The letters start again after so many years; digits repeat after 10 or 100, four of them never.</summary>
    public int CycleYears { get; }

    /// <summary>Checks a rule as typed.</summary>
    /// <param name="text">The rule's cells.</param>
    /// <param name="faults">Every fault found; empty when the rule is good.</param>
    /// <returns>The rule, or null when it has faults.</returns>
    public static SerialDateRule? Create(SerialDateRuleText text, out IReadOnlyList<string> faults)
    {
        var found = new List<string>();
        Regex? pattern = Compile(text.Pattern, found);
        bool digits = string.IsNullOrWhiteSpace(text.YearLetters) && string.IsNullOrWhiteSpace(text.YearOfFirst);
        int? firstYear = digits ? DigitsSince : Whole(text.YearOfFirst, "year_of_first", 1900, 2100, found);
        int? cycle = string.IsNullOrWhiteSpace(text.CycleYears) ? null : Whole(text.CycleYears, "cycle_years", 1, 100, found);
        string years = Symbols(text.YearLetters);
        string months = Symbols(text.MonthLetters);
        AddIf(years.Distinct().Count() != years.Length, "year_letters: a letter stands twice", found);
        AddIf(months.Length is not (0 or 12) || months.Distinct().Count() != months.Length, "month_letters: needs twelve different letters, or none for digits", found);
        AddIf(cycle < years.Length, "cycle_years: fewer than the letters of year_letters", found);
        AddIf(!string.IsNullOrWhiteSpace(text.Weeks) && !IsJanuary(text.Weeks) && !Is(text.Weeks, "iso"), "weeks: write iso or january", found);
        faults = found;
        return found.Count > 0 ? null : new SerialDateRule(text, pattern!, firstYear!.Value, cycle ?? years.Length);
    }

    /// <summary>Reads one serial.</summary>
    /// <param name="serial">The serial, trimmed, upper case.</param>
    /// <param name="notAfter">No later build date is possible.</param>
    /// <returns>Null when the serial does not have this rule's form.</returns>
    internal SerialDateReading? Read(string serial, DateOnly notAfter)
    {
        Match match = _pattern.Match(serial);
        if (!match.Success)
        {
            match = _pattern.Match(CompactKey.Of(serial));
        }

        if (!match.Success)
        {
            return null;
        }

        string symbol = match.Groups["year"].Value;
        (int offset, int cycle) = YearOffset(symbol);
        if (offset < 0)
        {
            return SerialDateReading.Broken($"year code '{symbol}' is not one of the rule's");
        }

        var candidates = new List<BuildInterval>();
        for (int year = FirstYear + offset; year <= notAfter.Year; year += cycle)
        {
            if (Within(year, match) is { } built && built.From <= notAfter)
            {
                candidates.Add(built);
            }

            if (cycle == 0)
            {
                break;
            }
        }

        // the code alone: a whole serial belongs in no table
        return candidates.Count > 0
            ? new SerialDateReading(candidates, null)
            : SerialDateReading.Broken($"date code '{symbol}{match.Groups["week"].Value}{match.Groups["month"].Value}' names no week, month or year before {notAfter:yyyy-MM-dd}");
    }

    private BuildInterval? Within(int year, Match match)
    {
        if (match.Groups["week"] is { Success: true } week)
        {
            return Number(week.Value) is not { } w ? null
                : _weeksSinceJanuary ? BuildInterval.WeekSinceJanuary(year, w)
                : BuildInterval.IsoWeek(year, w);
        }

        if (match.Groups["month"] is { Success: true } month)
        {
            int? m = MonthAlphabet.Length > 0 ? MonthAlphabet.IndexOf(month.Value, StringComparison.Ordinal) + 1 : Number(month.Value);
            return m is >= 1 and <= 12 ? BuildInterval.Month(year, m.Value) : null;
        }

        return BuildInterval.Year(year);
    }

    private (int Offset, int Cycle) YearOffset(string symbol)
    {
        if (YearAlphabet.Length > 0)
        {
            return (symbol.Length == 1 ? YearAlphabet.IndexOf(symbol[0], StringComparison.Ordinal) : -1, CycleYears);
        }

        if (Number(symbol) is not { } value)
        {
            return (-1, 0);
        }

        int cycle = symbol.Length >= 4 ? 0 : (int)Math.Pow(10, symbol.Length);
        return cycle == 0 ? (value - FirstYear, 0) : (((value - FirstYear) % cycle + cycle) % cycle, cycle);
    }

    private static Regex? Compile(string? pattern, List<string> faults)
    {
        if (string.IsNullOrWhiteSpace(pattern))
        {
            faults.Add("pattern: missing");
            return null;
        }

        try
        {
            var regex = new Regex(pattern, RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
            AddIf(!regex.GetGroupNames().Contains("year"), "pattern: has no group named year, write (?<year>...)", faults);
            return regex;
        }
        catch (Exception fault) when (fault is ArgumentException or NotSupportedException)
        {
            faults.Add($"pattern: cannot be used, {fault.Message}");
            return null;
        }
    }

    private static int? Whole(string? text, string field, int least, int most, List<string> faults)
    {
        int? value = Number(text?.Trim() ?? "");
        AddIf(value is null || value < least || value > most, $"{field}: needs a whole number from {least} to {most}", faults);
        return value;
    }

    private static int? Number(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? value : null;

    private static bool IsJanuary(string? weeks) => Is(weeks, "january");

    private static bool Is(string? text, string word) => string.Equals(text?.Trim(), word, StringComparison.OrdinalIgnoreCase);

    private static string Symbols(string? text) => CompactKey.Of(text);

    private static void AddIf(bool wrong, string fault, List<string> faults)
    {
        if (wrong)
        {
            faults.Add(fault);
        }
    }
}
