using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>
/// Days in a text file that a spreadsheet wrote as the number it counts them by, because the cell had lost its format:
/// <c>45495</c> is 2024-07-22. Only days from 1990 to 2039 are read, so that a number is never taken for a year and its
/// day, as in <c>24204</c>.
/// </summary>
internal static class SpreadsheetDay
{
    private const int Least = 32_874;
    private const int Most = 51_135;
    private const int SecondsPerDay = 86_400;

    /// <summary>The day and the time of day, to the second; false where the cell is no such number.</summary>
    public static bool TryRead(ReadOnlySpan<char> cell, out DateTime time)
    {
        time = default;
        cell = cell.Trim();
        if (cell.Length < 5 || cell[0] is < '3' or > '5' || cell[1..5].ContainsAnyExceptInRange('0', '9') || (cell.Length > 5 && cell[5] is not ('.' or ',')))
        {
            return false;
        }

        decimal fraction = 0;
        ReadOnlySpan<char> decimals = cell.Length > 5 ? cell[6..] : [];
        if (decimals.ContainsAnyExceptInRange('0', '9') || decimals.Length > 12 || (decimals.Length > 0 && !decimal.TryParse($"0.{decimals}", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out fraction)))
        {
            return false;
        }

        int days = int.Parse(cell[..5], NumberStyles.None, CultureInfo.InvariantCulture);
        if (days is < Least or > Most)
        {
            return false;
        }

        time = DateTime.FromOADate(days).AddSeconds((double)Math.Round(fraction * SecondsPerDay));
        return true;
    }
}
