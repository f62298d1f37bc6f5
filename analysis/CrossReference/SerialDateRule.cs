using System.Text.RegularExpressions;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>
/// How one brand writes the build date into its serial numbers. The pattern's named groups say where:
/// <c>year</c> (needed), and <c>month</c> or <c>week</c> where the code has them.
/// </summary>
public sealed record SerialDateRule
{
    private const int DigitsSince = 1970;
    private readonly Regex _pattern;
    private readonly FixedPattern? _fixed;
    private readonly SerialDateCodes _codes;

    private SerialDateRule(SerialDateRuleText text, Regex pattern, int firstYear, int cycleYears)
    {
        Brand = CompactKey.From(text.Brand);
        _pattern = pattern;
        _fixed = FixedPattern.Parse(text.Pattern!);
        _codes = new SerialDateCodes(Symbols(text.YearLetters), Symbols(text.MonthLetters), firstYear, cycleYears, Weeks(text.Weeks) ?? WeekCount.Iso);
    }

    /// <summary>Compact key of the brand; empty: any brand.</summary>
    public string Brand { get; }

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
        AddIf(Weeks(text.Weeks) is null, "weeks: write iso, january, either or calendar", found);
        faults = found;
        return found.Count > 0 ? null : new SerialDateRule(text, pattern!, firstYear!.Value, cycle ?? years.Length);
    }

    /// <summary>Reads one serial.</summary>
    /// <param name="serial">The serial, trimmed, upper case.</param>
    /// <param name="notAfter">No later build date is possible.</param>
    /// <returns>Null when the serial does not have this rule's form.</returns>
    internal SerialDateReading? Read(ReadOnlySpan<char> serial, DateOnly notAfter)
    {
        if (_fixed is not null && FixedPattern.Knows(serial))
        {
            return ReadFixed(_fixed, serial, notAfter);
        }

        string text = serial.ToString();
        Match match = _pattern.Match(text);
        if (!match.Success)
        {
            match = _pattern.Match(CompactKey.From(text));
        }

        if (!match.Success)
        {
            return null;
        }

        (Group week, Group month) = (match.Groups["week"], match.Groups["month"]);
        return _codes.Read(new(match.Groups["year"].ValueSpan, week.ValueSpan, week.Success, month.ValueSpan, month.Success), notAfter);
    }

    private SerialDateReading? ReadFixed(FixedPattern pattern, ReadOnlySpan<char> serial, DateOnly notAfter)
    {
        if (pattern.IsMatch(serial))
        {
            return ReadMatched(pattern, serial, notAfter);
        }

        Span<char> compact = serial.Length <= FixedPattern.MostPlaces ? stackalloc char[serial.Length] : new char[serial.Length];
        compact = compact[..CompactKey.From(serial, compact)];
        return pattern.IsMatch(compact) ? ReadMatched(pattern, compact, notAfter) : null;
    }

    private SerialDateReading ReadMatched(FixedPattern pattern, ReadOnlySpan<char> serial, DateOnly notAfter)
    {
        (Range? week, Range? month) = (pattern.Week, pattern.Month);
        return _codes.Read(new(serial[pattern.Year!.Value], week is { } w ? serial[w] : [], week is not null, month is { } m ? serial[m] : [], month is not null), notAfter);
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
        int? value = SerialDateCodes.Number(text.AsSpan().Trim());
        AddIf(value is null || value < least || value > most, $"{field}: needs a whole number from {least} to {most}", faults);
        return value;
    }

    private static WeekCount? Weeks(string? text) => text?.Trim().ToLowerInvariant() switch
    {
        null or "" or "iso" => WeekCount.Iso,
        "january" => WeekCount.January,
        "either" => WeekCount.Either,
        "calendar" => WeekCount.Calendar,
        _ => null,
    };

    private static string Symbols(string? text) => CompactKey.From(text);

    private static void AddIf(bool wrong, string fault, List<string> faults)
    {
        if (wrong)
        {
            faults.Add(fault);
        }
    }
}

/// <summary>
/// One line of the shop's table of serial date-code rules, as typed. Columns of the table: brand, pattern,
/// year_letters, year_of_first, cycle_years, month_letters, and, where it is there, weeks.
/// </summary>
/// <param name="Brand">Brand; empty or *: any.</param>
/// <param name="Pattern">Regular expression with groups year and month or week, tried on the serial as typed in upper case, then on its letters and digits alone.</param>
/// <param name="YearLetters">One symbol a year, for example ABCDEFGHJKLM; empty: digits.</param>
/// <param name="YearOfFirst">Year of the first letter, or first year in which digits were used; empty, for digits: 1970.</param>
/// <param name="CycleYears">The letters start again after so many years; empty: the length of the alphabet. Digits need none.</param>
/// <param name="MonthLetters">Twelve symbols; empty: digits.</param>
/// <param name="Weeks">How weeks are counted: iso (ISO 8601, Monday to Sunday), january (seven days each from 1 January), either (not known which of the two), or calendar (ISO weeks beside the calendar year); empty: iso.</param>
public sealed record SerialDateRuleText(
    string? Brand, string? Pattern, string? YearLetters, string? YearOfFirst, string? CycleYears, string? MonthLetters, string? Weeks = null);

/// <summary>What a serial says of the build date: possible intervals oldest first, or why it says nothing.</summary>
/// <param name="Candidates">Possible build intervals; several when the code repeats over the years.</param>
/// <param name="Fault">Why the serial breaks its brand's rule, or null if it does not, or its brand has no rule.</param>
public sealed record SerialDateReading(IReadOnlyList<BuildInterval> Candidates, string? Fault)
{
    /// <summary>Nothing known and nothing wrong.</summary>
    public static readonly SerialDateReading Silent = new([], null);

    /// <summary>The candidates as one text, as <see cref="BuildInterval.Write"/> writes them, or null if there are none.</summary>
    public string? Written { get; } = BuildInterval.Write(Candidates);

    internal static SerialDateReading Broken(string why) => new([], why);
}
