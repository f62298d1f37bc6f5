using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Cuts numbers longer than an error code: phone and card numbers in any typing, account and document numbers. Dates of
/// this century, times and numbers of up to four digits stay, and so do two short groups with a hyphen, as on parts. Four
/// digits one by one with hyphens are the combination of a lock.
/// </summary>
internal static partial class NumberCuts
{
    private const int MostBetween = 3;
    private const int LongestSingle = 4;
    private const int LongestGrouped = 5;
    private const int ShortestSecret = 4;
    private const int ShortestPassword = 5;
    private const int FewestOfCombination = 4;
    private const int MostBeforeBirth = 6;
    private const int MostOfPlate = 4;
    private const int FewestOfPhone = 7;
    private const int MostOfPhone = 15;
    private const int MostLetters = 4;
    private const int MostOfCode = 8;
    private static readonly System.Buffers.SearchValues<char> DigitsAndSlash = System.Buffers.SearchValues.Create("0123456789/");

    /// <summary>Cuts what a text holds of them.</summary>
    public static void Apply(TextTokens tokens, TextCuts cuts)
    {
        if (!tokens.HasDigits)
        {
            Spelled(tokens, cuts);
            return;
        }

        string text = tokens.Text;
        bool[]? dates = text.AsSpan().ContainsAny('-', '.', '/') ? Dates(text) : null;
        for (int i = 0; i < text.Length;)
        {
            if (Value(text, i) < 0 || dates?[i] == true)
            {
                i++;
                continue;
            }

            int end = End(text, i, dates, out int digits, out int longest);
            bool combination = longest == 1 && digits >= FewestOfCombination && text.AsSpan(i, end - i).ContainsAny('-', '.') && !text.AsSpan(i, end - i).Contains(' ');
            if ((longest > LongestSingle || digits > LongestGrouped || combination) && !IsLetteredCode(text, i, end, digits, longest))
            {
                int start = i > 0 && text[i - 1] is '(' or '+' ? i - 1 : i;
                start = start > 0 && text[start - 1] is '+' or '(' ? start - 1 : start;
                cuts.Cut(start, end, digits is >= 13 and <= 19 && IsCard(text.AsSpan(i, end - i)) ? CutKind.Card : digits is >= FewestOfPhone and <= MostOfPhone ? CutKind.Phone : CutKind.Number);
            }

            i = end;
        }

        Spelled(tokens, cuts);
        Secrets(tokens, cuts);
        Plates(tokens, cuts);
        Births(tokens, cuts);
    }

    // Born on the 3rd of April 52: every number close behind.
    private static void Births(TextTokens tokens, TextCuts cuts)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            for (int k = i + 1; PersonalWords.Birth.Contains(tokens[i].Hash) && k < tokens.Count && k - i <= MostBeforeBirth && !tokens.Gap(k - 1).ContainsAny(';', '\n'); k++)
            {
                if (tokens[k].Kind != TokenKind.Word)
                {
                    cuts.Cut(tokens[k].Start, tokens[k].End, CutKind.Number);
                }
            }
        }
    }

    // SE40/14020: capitals that touch the first digit, and groups of digits that only slashes part, are a code of a part or a
    // document, unless the capitals announce a number (TEL, PIN).
    private static bool IsLetteredCode(string text, int start, int end, int digits, int longest)
    {
        int first = start;
        while (first > 0 && char.IsAsciiLetterUpper(text[first - 1]))
        {
            first--;
        }

        if (start - first is < 2 or > MostLetters || digits > MostOfCode || longest > LongestGrouped || text[start] == '0'
            || (first > 0 && (char.IsLetter(text[first - 1]) || TextFold.Digit(text[first - 1]) >= 0)) || !text.AsSpan(start, end - start).Contains('/') || text.AsSpan(start, end - start).ContainsAnyExcept(DigitsAndSlash))
        {
            return false;
        }

        const WordClass Announces = WordClass.Call | WordClass.Secret | WordClass.Plate | WordClass.Entrance | WordClass.Title;
        return (PersonalWords.Classes.Of(WordList.Hash(TextFold.Fold(text.AsSpan(first, start - first)))) & Announces) == 0;
    }

    // Key safe 4821, gate code 4821: as short as an error code, but it opens somebody's door.
    private static void Secrets(TextTokens tokens, TextCuts cuts)
    {
        for (int i = 1; i < tokens.Count; i++)
        {
            bool number = tokens[i].Kind == TokenKind.Number ? tokens[i].FoldedLength >= ShortestSecret : tokens[i].Kind == TokenKind.Mixed && tokens[i].FoldedLength >= ShortestPassword;
            if (!number && !IsBell(tokens, i))
            {
                continue;
            }

            int before = i - 1;
            while (before > 0 && i - before < 3 && tokens[before].Is(WordClass.Function))
            {
                before--;
            }

            if (tokens[before].Is(WordClass.Secret) || (before > 0 && tokens.Folded(before) is "code" or "safe" or "box" or "kod" or "codice" or "codigo" && tokens[before - 1].Is(WordClass.Entrance)))
            {
                cuts.Cut(tokens[i].Start, tokens[i].End, CutKind.Number);
            }
        }
    }

    // 4B: digits and one letter behind, as on a bell or a door; displayed codes begin with the letter.
    private static bool IsBell(TextTokens tokens, int i) =>
        tokens[i].Kind == TokenKind.Mixed && char.IsAsciiLetter(tokens.Folded(i)[^1]) && !tokens.Folded(i)[..^1].ContainsAnyExceptInRange('0', '9');

    // License plate AB12 CDE: groups of few letters and digits behind a word for it.
    private static void Plates(TextTokens tokens, TextCuts cuts)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (!tokens[i].Is(WordClass.Plate) && !(i > 0 && tokens.Folded(i) is "plate" or "plates" && tokens.Folded(i - 1) is "license" or "licence" or "number"))
            {
                continue;
            }

            int end = i;
            bool digits = false;
            while (end + 1 < tokens.Count && end - i < MostOfPlate && tokens.Gap(end).Length <= 3 && (tokens[end + 1].Kind != TokenKind.Word || IsCapitals(tokens, end + 1)))
            {
                end++;
                digits |= tokens[end].Kind != TokenKind.Word;
            }

            if (digits)
            {
                cuts.Cut(tokens[i + 1].Start, tokens[end].End, CutKind.Number);
            }
        }
    }

    private static bool IsCapitals(TextTokens tokens, int i) =>
        tokens[i].FoldedLength <= 3 && !tokens.Text.AsSpan(tokens[i].Start, tokens[i].End - tokens[i].Start).ContainsAnyExceptInRange('A', 'Z');

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
            else if (TextFold.IsWordPart(text[i]) || (text[i] is ';' or ',' && i + 1 < text.Length && text[i + 1] == ' '))
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
            : text[i] is 'o' or 'O' && IsZero(text, i) ? 0 : -1;
    }

    // One or more of them between digits, or between a digit and no letter.
    private static bool IsZero(string text, int i)
    {
        int first = i, last = i;
        while (first > 0 && i - first < MostOfPhone && text[first - 1] is 'o' or 'O')
        {
            first--;
        }

        while (last + 1 < text.Length && last - i < MostOfPhone && text[last + 1] is 'o' or 'O')
        {
            last++;
        }

        char before = first > 0 ? text[first - 1] : ' ', after = last + 1 < text.Length ? text[last + 1] : ' ';
        return !char.IsLetter(before) && !char.IsLetter(after) && (TextFold.Digit(before) >= 0 || TextFold.Digit(after) >= 0);
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
            if (i < tokens.Count && (tokens[i].Is(WordClass.Digit) || (tokens[i].Kind == TokenKind.Number && tokens[i].FoldedLength <= 2)))
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
