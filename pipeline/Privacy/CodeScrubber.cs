using System.Text;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Keeps the code in a cell of codes and cuts the rest: words that nobody vouches for, phone numbers, e-mail addresses,
/// street addresses, names beside titles. What remains is the code as typed.
/// </summary>
internal static class CodeScrubber
{
    private const int LongestLetters = 4;
    private const int ManyDigits = 7;
    private const int MostDigits = 15;
    private static readonly System.Buffers.SearchValues<char> Numeric = System.Buffers.SearchValues.Create("0123456789-./");
    private static readonly System.Buffers.SearchValues<char> Breaks = System.Buffers.SearchValues.Create(" ,;:()[]+\t\u00a0\u2007\u2009\u202f|");

    /// <summary>The code, the same instance where nothing is cut, or null where no code is left.</summary>
    /// <param name="cell">The cell, not empty.</param>
    /// <param name="field">Name of its field.</param>
    /// <param name="words">Words of the file.</param>
    public static string? Clean(string cell, string field, FileWords words)
    {
        if (IsPlain(cell) || IsNumbered(cell))
        {
            return cell;
        }

        bool usual = PhoneText.Shape(cell) is { } shape && words.Shapes.Contains(field + '\t' + shape);
        if (usual && !cell.AsSpan().ContainsAnyExcept(Numeric))
        {
            return cell;
        }

        if (!usual && (PhoneText.Is(cell, bareToo: words.Fewest == FileWords.Customers) || PhoneText.IsDisguised(cell)))
        {
            return null;
        }

        var tokens = new TextTokens(cell);
        var cuts = new TextCuts(cell);
        EmailCuts.Apply(tokens, cuts);
        AddressCuts.Apply(tokens, cuts, words);
        if (!usual)
        {
            CutNumbers(cell, cuts);
        }

        bool vouched = cuts.IsNone && words.Values.Contains(field + '\t' + cell);
        if (!vouched)
        {
            NameCuts.Apply(tokens, cuts, words);
            TextScrubber.CutSpelledOut(tokens, cuts);
            for (int i = 0; i < tokens.Count; i++)
            {
                if (!IsCodePart(tokens, i, words))
                {
                    cuts.Cut(tokens[i].Start, tokens[i].End, CutKind.Word);
                }
            }
        }

        return cuts.IsNone ? cell : Rest(tokens, cuts);
    }

    /// <summary>True for most codes: letters in short runs, digits, no blank, not as many digits as a phone number has.</summary>
    public static bool IsPlain(ReadOnlySpan<char> cell)
    {
        int run = 0, digits = 0;
        bool small = false, letters = false;
        foreach (char c in cell)
        {
            if (char.IsAsciiDigit(c))
            {
                digits++;
                run = 0;
            }
            else if (char.IsAsciiLetter(c))
            {
                run++;
                letters = true;
                small |= char.IsAsciiLetterLower(c);
            }
            else if (c is '-' or '.' or '/' or '*' or '#')
            {
                run = 0;
            }
            else
            {
                return false;
            }

            if (run > LongestLetters || (run > 2 && small) || digits > 8)
            {
                return false;
            }
        }

        return digits > 0 && (letters || digits < ManyDigits);
    }

    /// <summary>True for one or two capitals, then digits and nothing else: the running number of a document, which may have many digits.</summary>
    public static bool IsNumbered(ReadOnlySpan<char> cell)
    {
        int letters = cell.IndexOfAnyExceptInRange('A', 'Z');
        return letters is 1 or 2 && !cell[letters..].ContainsAnyExceptInRange('0', '9');
    }

    /// <summary>True for a token that may be part of a code: digits, few letters, letters shouted, a known word.</summary>
    public static bool IsCodePart(TextTokens tokens, int i, FileWords words)
    {
        TextToken token = tokens[i];
        ReadOnlySpan<char> folded = tokens.Folded(i);
        if (token.Kind == TokenKind.Number)
        {
            return true;
        }

        if (token.Kind == TokenKind.Word)
        {
            bool shouted = folded.Length <= LongestLetters && !tokens.Text.AsSpan(token.Start, token.End - token.Start).ContainsAnyInRange('a', 'z');
            return folded.Length <= 2 || (words.IsListed(folded, token.Hash) && !IsNameToo(folded, token.Hash, words)) || (shouted && char.IsAscii(folded[0]) && !words.IsName(folded, token.Hash));
        }

        ReadOnlySpan<char> typed = tokens.Text.AsSpan(token.Start, token.End - token.Start);
        if (PhoneText.IsDisguised(typed))
        {
            return false;
        }

        bool small = typed.ContainsAnyInRange('a', 'z');
        for (int at = 0; at < folded.Length;)
        {
            int start = at;
            bool digit = char.IsAsciiDigit(folded[at]);
            while (at < folded.Length && char.IsAsciiDigit(folded[at]) == digit)
            {
                at++;
            }

            ReadOnlySpan<char> run = folded[start..at];
            if (!digit && run.Length > 2)
            {
                ulong hash = WordList.Hash(run);
                if (!words.IsListed(run, hash) && (run.Length > LongestLetters || (small && words.IsName(run, hash))))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static bool IsNameToo(ReadOnlySpan<char> folded, ulong hash, FileWords words) =>
        (PersonalWords.Classes.Of(hash) & (WordClass.Own | WordClass.Common)) == 0 && !words.IsFrequent(hash) && words.IsName(folded, hash);

    // Pieces without a letter, side by side: as many digits as a phone number has are none of the code beside them, and a
    // card number is none at all.
    private static void CutNumbers(string cell, TextCuts cuts)
    {
        for (int start = 0; start < cell.Length;)
        {
            int end = start, digits = 0, last = start;
            while (end < cell.Length && !char.IsLetter(cell[end]))
            {
                bool digit = TextFold.Digit(cell[end]) >= 0;
                digits += digit ? 1 : 0;
                end++;
                last = digit ? end : last;
            }

            // What a letter touches is part of its code.
            int first = start;
            while (start > 0 && first < last && !IsBreak(cell[first]))
            {
                digits -= TextFold.Digit(cell[first++]) >= 0 ? 1 : 0;
            }

            while (end < cell.Length && last > first && !IsBreak(cell[last - 1]) && !cell.AsSpan(last, end - last).ContainsAny(Breaks))
            {
                digits -= TextFold.Digit(cell[--last]) >= 0 ? 1 : 0;
            }

            bool alone = first == 0 && last == cell.Length;
            if ((alone ? digits > MostDigits : digits >= ManyDigits) || (digits is >= 13 and <= 19 && NumberCuts.IsCard(cell.AsSpan(first, last - first))))
            {
                cuts.Cut(first, last, CutKind.Phone);
            }
            else if (alone)
            {
                CutBesideCode(cell, cuts);
            }

            start = Math.Max(end, start + 1);
            while (start < cell.Length && char.IsLetter(cell[start]))
            {
                start++;
            }
        }
    }

    // A code of digits with a phone number before or behind it.
    private static void CutBesideCode(string cell, TextCuts cuts)
    {
        int first = cell.AsSpan().IndexOfAny(Breaks), last = cell.AsSpan().LastIndexOfAny(Breaks);
        if (first > 0 && PhoneText.Is(cell.AsSpan(first).Trim(), bareToo: true))
        {
            cuts.Cut(first, cell.Length, CutKind.Phone);
        }
        else if (last > 0 && PhoneText.Is(cell.AsSpan(0, last).Trim(), bareToo: true))
        {
            cuts.Cut(0, last, CutKind.Phone);
        }
    }

    private static bool IsBreak(char c) => Breaks.Contains(c);

    // The pieces that stay, with what stands between them; brackets and commas around what is gone go too.
    private static string? Rest(TextTokens tokens, TextCuts cuts)
    {
        var rest = new StringBuilder();
        bool gap = false, code = false;
        for (int i = 0; i < tokens.Count; i++)
        {
            if (cuts.IsCut(tokens[i].Start))
            {
                gap = true;
                continue;
            }

            if (rest.Length > 0)
            {
                rest.Append(gap ? " " : tokens.Gap(i - 1));
            }

            rest.Append(tokens.Text, tokens[i].Start, tokens[i].End - tokens[i].Start);
            code |= tokens[i].Kind != TokenKind.Word;
            gap = false;
        }

        // Words that are left over from a sentence are no code.
        return code ? rest.ToString() : null;
    }
}
