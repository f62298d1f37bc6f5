using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Finds a displayed code in free text: <c>E20 on display</c>, <c>error 4C</c>, <c>code F-21</c>.</summary>
internal static partial class ErrorCodeText
{
    /// <summary>The code in upper case without marks, or null.</summary>
    public static string? Find(string? text)
    {
        if (string.IsNullOrEmpty(text) || !text.AsSpan().ContainsAnyInRange('0', '9'))
        {
            return null;
        }

        Match match = Named().Match(text);
        match = match.Success ? match : Bare().Match(text);
        return match.Success ? Plain(match.Groups[1].Value) : null;
    }

    /// <summary>A code as typed in a cell of its own, in upper case without marks, or null if nothing is usable.</summary>
    public static string? Plain(string? cell)
    {
        if (EmptyMark.Is(cell))
        {
            return null;
        }

        string plain = string.Concat(cell!.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();
        return plain.Length is > 0 and <= 12 ? plain : null;
    }

    [GeneratedRegex(@"\b(?:error|err|code|fault)s?\b(?:\s+(?:code|no|number))?[\s:#.-]{0,3}([A-Z]{0,2}[- ]?\d{1,3}[A-Z]?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Named();

    [GeneratedRegex(@"(?<![\w-])([EFHUC]{1,2}[- ]?\d{1,3})(?![\w-])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Bare();
}
