using System.Globalization;

namespace PartsSignal.Pipeline.Core;

/// <summary>A number with its noun.</summary>
internal static class Counted
{
    /// <summary>The number, the noun, and its plural unless it is 1.</summary>
    /// <param name="number">The number.</param>
    /// <param name="noun">The noun, whose plural ends in s.</param>
    /// <param name="width">Least width of the number, filled with blanks on the left.</param>
    public static string Of(long number, string noun, int width = 0) =>
        $"{number.ToString("N0", CultureInfo.InvariantCulture).PadLeft(width)} {noun}{(number == 1 ? "" : "s")}";
}
