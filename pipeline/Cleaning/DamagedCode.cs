using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Tells a code that a spreadsheet has turned into a number or a date: <c>8.6E+05</c>, <c>1E+10</c>, <c>Mar-01</c>, <c>1-Mar</c>.</summary>
internal static partial class DamagedCode
{
    /// <summary>True when the text is what a spreadsheet shows for a code it took for something else. <c>1E10</c> without a sign and <c>MAR-01</c> in capitals are text that no spreadsheet writes by itself.</summary>
    public static bool Is(ReadOnlySpan<char> text) =>
        text.Length is >= 4 and <= 24 && (text.IndexOfAny("eE") > 0 || text.Contains('-')) && Pattern().IsMatch(text);

    [GeneratedRegex(@"^\d([.,]\d+)?E[+]\d{1,3}$|^\d{1,2}-(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)(-\d{2})?$|^(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)-\d{2}$", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
