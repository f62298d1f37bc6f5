using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Cuts numbers longer than an error code: phone and card numbers in any typing, account and document numbers. Dates of
/// this century, times and numbers of up to four digits stay, and so do two short groups with a hyphen, as on parts.
/// </summary>
internal static partial class NumberCuts
{
    private const int MostBetween = 3;
    private const int LongestSingle = 4;
    private const int LongestGrouped = 5;
    private const int ShortestSecret = 4;
    private const int FewestOfPhone = 7;
    private const int MostOfPhone = 15;

    /// <summary>Cuts what a text holds of them.</summary>
    public static void Apply(TextTokens tokens, TextCuts cuts)
    {
        string text = tokens.Text;
        bool[]? dates = Dates(text);
        for (int i = 0; i < text.Length;)
        {
            if (Value(text, i) < 0 || dates?[i] == true)
            {
                i++;
                continue;
            }

            int end = End(text, i, dates, out int digits, out int longest);
            if (longest > LongestSingle || digits > LongestGrouped)
            {
                int start = i > 0 && text[i - 1] is '(' or '+' ? i - 1 : i;
                start = start > 0 && text[start - 1] is '+' or '(' ? start - 1 : start;
                cuts.Cut(start, end, digits is >= 13 and <= 19 && IsCard(text.AsSpan(i, end - i)) ? CutKind.Card : digits is >= FewestOfPhone and <= MostOfPhone ? CutKind.Phone : CutKind.Number);
            }

            i = end;
        }

        Spelled(tokens, cuts);
        Secrets(tokens, cuts);
    }

    // Key safe 4821, gate code 4821: as short as an error code, but it opens somebody's door.
    private static void Secrets(TextTokens tokens, TextCuts cuts)
    {
        for (int i = 1; i < tokens.Count; i++)
        {
            if (tokens[i].Kind != TokenKind.Number || tokens[i].FoldedLength < ShortestSecret)
            {
                continue;
            }

            int before = i - 1;
            while (before > 0 && i - before < 3 && PersonalWords.Function.Contains(tokens[before].Hash))
            {
                before--;
            }

            if (PersonalWords.Secrets.Contains(tokens[before].Hash) || (before > 0 && tokens.Folded(before) is "code" or "safe" or "box" or "kod" or "codice" or "codigo" && PersonalWords.Entrances.Contains(tokens[before - 1].Hash)))
            {
                cuts.Cut(tokens[i].Start, tokens[i].End, CutKind.Number);
            }
        }
    }

    // A number goes on over blanks, hyphens, dots and the like, but not over letters; an O between digits is a zero.
    private static int End(string text, int start, bool[]? dates, out int digits, out int longest)
    {
        int end = start, single = 0;
        (digits, longest) = (0, 0);
        for (int i = start, between = 0; i < text.Length && between <= MostBetween && dates?[i] != true; i++)
        {
            if (Value(text, i) >= 0)
            {
                single = i == end ? single + 1 : 1;
                (end, between) = (i + 1, 0);
                digits++;
                longest = Math.Max(longest, single);
            }
            else if (TextFold.IsWordPart(text[i]) || text[i] is ';' || (text[i] == ',' && i + 1 < text.Length && text[i + 1] == ' '))
            {
                // Characters that nobody sees do not end a number.
                if (char.IsLetter(text[i]) || text[i] < 128)
                {
                    break;
                }
            }
            else
            {
                between++;
            }
        }

        return end;
    }

    private static int Value(string text, int i)
    {
        int digit = TextFold.Digit(text[i]);
        return digit >= 0 ? digit
            : text[i] is 'o' or 'O' && (i == 0 || !char.IsLetter(text[i - 1])) && (i + 1 == text.Length || !char.IsLetter(text[i + 1]))
                && ((i > 0 && TextFold.Digit(text[i - 1]) >= 0) || (i + 1 < text.Length && TextFold.Digit(text[i + 1]) >= 0)) ? 0 : -1;
    }

    private static bool[]? Dates(string text)
    {
        bool[]? dates = null;
        foreach (ValueMatch match in Date().EnumerateMatches(text))
        {
            dates ??= new bool[text.Length];
            dates.AsSpan(match.Index, match.Length).Fill(true);
        }

        return dates;
    }

    // Five or more words for digits in a row.
    private static void Spelled(TextTokens tokens, TextCuts cuts)
    {
        for (int first = 0, i = 0; i <= tokens.Count; i++)
        {
            if (i < tokens.Count && (PersonalWords.Digits.Contains(tokens[i].Hash) || (tokens[i].Kind == TokenKind.Number && tokens[i].FoldedLength <= 2)))
            {
                continue;
            }

            if (i - first >= 5)
            {
                cuts.Cut(tokens[first].Start, tokens[i - 1].End, CutKind.Phone);
            }

            first = i + 1;
        }
    }

    /// <summary>True when the digits pass the check of payment cards (Luhn 1960).</summary>
    public static bool IsCard(ReadOnlySpan<char> text)
    {
        int sum = 0;
        bool twice = false;
        for (int i = text.Length - 1; i >= 0; i--)
        {
            int digit = TextFold.Digit(text[i]);
            if (digit >= 0)
            {
                int d = digit * (twice ? 2 : 1);
                sum += d > 9 ? d - 9 : d;
                twice = !twice;
            }
        }

        return sum % 10 == 0;
    }

    [GeneratedRegex(@"(?<![\d/.-])(?:20\d\d[-./](?:0?[1-9]|1[0-2])[-./](?:[0-2]?\d|3[01])|(?:[0-2]?\d|3[01])[-./](?:[0-2]?\d|3[01])[-./](?:20\d\d|[123]\d))(?![\d/.-]*\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Date();
}
