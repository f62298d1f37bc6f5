using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.World;

/// <summary>An invented maker.</summary>
/// <param name="Name">Its name.</param>
/// <param name="CodeLetter">Letter before its error codes.</param>
/// <param name="Serial">How its serial numbers tell the build date.</param>
internal sealed record Brand(string Name, string CodeLetter, SerialRule Serial)
{
    public static IReadOnlyList<Brand> ReadAll()
    {
        DataTable table = DataTable.Read("brands");
        return [.. table.Rows.Select(r => new Brand(
            table.Text(r, "brand"),
            table.Text(r, "code_letter"),
            new SerialRule(
                table.Text(r, "serial_rule"),
                table.Text(r, "pattern"),
                table.Text(r, "year_letters"),
                table.Text(r, "year_of_first").Length == 0 ? 0 : table.Whole(r, "year_of_first"),
                table.Text(r, "cycle_years").Length == 0 ? 0 : table.Whole(r, "cycle_years"),
                table.Text(r, "month_letters"))))];
    }

    /// <summary>The code the display shows for a group of faults.</summary>
    public string ErrorCode(int group) => CodeLetter switch
    {
        "F" => $"F0{group}",
        "H" => $"H{group}0",
        "C" => $"C-{group}",
        _ => $"{CodeLetter}{group}0",
    };
}

/// <summary>How a maker writes the build date into a serial number.</summary>
internal sealed record SerialRule(string Kind, string Pattern, string YearLetters, int YearOfFirst, int CycleYears, string MonthLetters)
{
    public bool TellsDate => Kind != "none";

    /// <summary>The date code is a week: seven days each from 1 January, week 52 to the end of the year.</summary>
    public bool CountsWeeks => Kind.EndsWith("week", StringComparison.Ordinal);

    /// <summary>A serial number for a unit built on a day.</summary>
    public string Write(int builtDay, Dice dice)
    {
        DateOnly date = ShopCalendar.Date(builtDay);
        int week = Math.Min(52, ((date.DayOfYear - 1) / 7) + 1);
        return Kind switch
        {
            "letter_month" => $"{YearLetter(date.Year)}{MonthLetters[date.Month - 1]}{Digits(dice, 6)}",
            "numeric_week" when Pattern.StartsWith("^G", StringComparison.Ordinal) => $"G{Two(date.Year % 100)}{Two(week)}{Digits(dice, 4)}",
            "numeric_week" => $"{Two(date.Year % 100)}{Two(week)}-{Digits(dice, 5)}",
            "letter_week" => $"{Digits(dice, 4)}{YearLetter(date.Year)}{Two(week)}{Digits(dice, 3)}",
            "tens_week" => $"T{YearLetter(date.Year)}{Two(week)}{Digits(dice, 5)}",
            "letter_numeric_month" => $"Z{Digits(dice, 3)}{YearLetter(date.Year)}{Two(date.Month)}{Digits(dice, 4)}",
            _ => $"{Digits(dice, 8)}",
        };
    }

    /// <summary>
    /// Build intervals a reader of the serial can tell, as month indices, both ends inside. A week within a month leaves
    /// the month; a letter that comes round again leaves one interval for each round up to the day of the call.
    /// </summary>
    public IReadOnlyList<(int From, int To)> Intervals(int builtDay, int callDay)
    {
        int month = ShopCalendar.MonthIndex(builtDay);
        if (CycleYears == 0)
        {
            return [(month, month)];
        }

        var found = new List<(int, int)>();
        for (int other = month % (CycleYears * 12); other <= ShopCalendar.MonthIndex(callDay); other += CycleYears * 12)
        {
            found.Add((other, other));
        }

        return found;
    }

    private char YearLetter(int year) => YearLetters[(((year - YearOfFirst) % CycleYears) + CycleYears) % CycleYears];

    private static string Two(int value) => value.ToString("00", CultureInfo.InvariantCulture);

    private static string Digits(Dice dice, int count)
    {
        Span<char> digits = stackalloc char[count];
        for (int i = 0; i < count; i++)
        {
            digits[i] = (char)('0' + dice.Below(10));
        }

        return new string(digits);
    }
}
