using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>
/// Reads a part's number and its name from one cell where no mark stands between them: <c>DP-118 (drain pump)</c>,
/// <c>Heater 6 kW (HK-4410)</c>, <c>drain pump DP-118</c>, <c>QC4100 Ice maker</c>, <c>376-7460 DRUM ROLLER</c>. A number without letters is told from a
/// size or a year by its five digits.
/// </summary>
internal static partial class NumberBesideNameText
{
    private const int FewestLetters = 4;

    /// <summary>True where the cell begins or ends with a number that has letters and digits; a name may be short beside it, and is then left out.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="number">The number.</param>
    /// <param name="name">The name, or null where what stands beside the number is no name.</param>
    public static bool TryRead(string? cell, out string number, out string? name)
    {
        (number, name) = ("", null);
        if (cell is null || !cell.Contains(' ', StringComparison.Ordinal))
        {
            return false;
        }

        Match match = First().Match(cell);
        match = match.Success ? match : InBrackets().Match(cell);
        match = match.Success ? match : Last().Match(cell);
        string rest = match.Groups["name"].Value.Trim(' ', ',', '-', ':');
        if (rest.StartsWith('(') && rest.EndsWith(')'))
        {
            rest = rest[1..^1].Trim();
        }

        // More digits than letters make both one number that was typed with blanks: AB12 77 B.
        if (!match.Success || rest.Count(char.IsLetter) <= rest.Count(char.IsAsciiDigit) || rest.Count(char.IsLetter) < 3)
        {
            return false;
        }

        (number, name) = (match.Groups["number"].Value, rest.Count(char.IsLetter) < FewestLetters ? null : rest);
        return true;
    }

    [GeneratedRegex(@"^(?<number>(?:[A-Za-z]{1,4}(?:-[0-9]{2,}|[0-9]{3,})|[A-Z]{2,4}-[0-9])(?:-?[A-Za-z0-9]{1,4})?|[0-9](?:[-./]?[0-9]){4,}[A-Za-z]?),? +(?<name>\(?\p{L}.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex First();

    // In brackets a number stands apart, so that its name may have digits too.
    [GeneratedRegex(@"^(?<name>\p{L}[^()]*?),? *\((?<number>(?:[A-Za-z]{1,4}(?:-[0-9]{2,}|[0-9]{3,})|[A-Z]{2,4}-[0-9])(?:-?[A-Za-z0-9]{1,4})?|[0-9](?:[-./]?[0-9]){4,}[A-Za-z]?)\)$", RegexOptions.CultureInvariant)]
    private static partial Regex InBrackets();

    [GeneratedRegex(@"^(?<name>\p{L}[^0-9]*?),? +\(?(?<number>(?:[A-Za-z]{1,4}(?:-[0-9]{2,}|[0-9]{3,})|[A-Z]{2,4}-[0-9])(?:-?[A-Za-z0-9]{1,4})?)\)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Last();
}
