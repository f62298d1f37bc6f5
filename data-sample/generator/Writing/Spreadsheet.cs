using System.Globalization;

namespace PartsSignal.SampleShop.Writing;

/// <summary>What a spreadsheet makes of a part number when it opens a text file and saves it again.</summary>
internal static class Spreadsheet
{
    private static readonly string[] Months = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    /// <summary>The cell as shown: 1E10 turns into 1.00E+10, MAR-01 into 01-Mar, 0077313 into 77313; other text stays.</summary>
    public static string Show(string number)
    {
        int e = number.IndexOf('E', StringComparison.Ordinal);
        if (e > 0 && number[..e].All(char.IsAsciiDigit) && e < number.Length - 1 && number[(e + 1)..].All(char.IsAsciiDigit))
        {
            return $"{number[..e]}.00E+{int.Parse(number.AsSpan(e + 1), CultureInfo.InvariantCulture).ToString("00", CultureInfo.InvariantCulture)}";
        }

        if (number.Length == 6 && number[3] == '-' && Array.IndexOf(Months, number[..3]) is var month and >= 0)
        {
            return $"{number[4..]}-{CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames[month]}";
        }

        return number.All(char.IsAsciiDigit) ? number.TrimStart('0') : number;
    }
}
