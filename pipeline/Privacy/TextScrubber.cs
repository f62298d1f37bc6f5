using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Takes personal data out of free text. Words stay only where the file's words vouch for them; e-mail addresses, phone
/// and card numbers, street addresses, and names beside "Mr" or "call" go whatever they are made of. What is taken out
/// leaves a mark such as <c>[phone]</c>. When in doubt it takes out.
/// </summary>
internal static class TextScrubber
{
    private const int MostDigits = 4;
    private const int MostLetters = 2;
    private const int FewestSpelled = 4;

    /// <summary>The text without personal data; the same instance when there was none.</summary>
    /// <param name="text">Free text.</param>
    /// <param name="words">Words that it may keep.</param>
    public static string Scrub(string text, FileWords words) => Scrub(new TextTokens(text), words);

    /// <summary>The same for a text that is cut into tokens already.</summary>
    public static string Scrub(TextTokens tokens, FileWords words) => Scrub(tokens, words, out _);

    /// <summary>The same, with the cuts that are made whatever the words are, for reading the text only: it must never be stored so.</summary>
    public static string Scrub(TextTokens tokens, FileWords words, out TextCuts forReading)
    {
        var cuts = new TextCuts(tokens.Text);
        Patterns(tokens, cuts, words);
        forReading = cuts.Copy();
        for (int i = 0; i < tokens.Count; i++)
        {
            if (!MayStay(tokens, i, words))
            {
                cuts.Cut(tokens[i].Start, tokens[i].End, CutKind.Word);
            }
        }

        CutSpelledOut(tokens, cuts);
        if (!cuts.IsNone)
        {
            Spread(tokens, cuts);
            SpreadOverAnd(tokens, cuts, words);
        }

        return cuts.Apply();
    }

    /// <summary>Cuts what is personal by its form or by what stands beside it.</summary>
    public static void Patterns(TextTokens tokens, TextCuts cuts, FileWords words)
    {
        EmailCuts.Apply(tokens, cuts);
        NumberCuts.Apply(tokens, cuts);
        AddressCuts.Apply(tokens, cuts, words);
        NameCuts.Apply(tokens, cuts, words);
    }

    /// <summary>True for a known word, a short number, and a short code.</summary>
    public static bool MayStay(TextTokens tokens, int i, FileWords words)
    {
        TextToken token = tokens[i];
        ReadOnlySpan<char> folded = tokens.Folded(i);
        return token.Kind switch
        {
            TokenKind.Number => true,
            TokenKind.Word => words.IsKnown(folded, token.Hash) || KnownParts(tokens.Text.AsSpan(token.Start, token.End - token.Start), words),
            _ => IsShortCode(folded, words),
        };
    }

    // L'eau, d'acqua: each side of the apostrophe stands for itself.
    private static bool KnownParts(ReadOnlySpan<char> word, FileWords words)
    {
        int at = 0;
        while (at < word.Length && !TextFold.IsApostrophe(word[at]))
        {
            at++;
        }

        if (at == 0 || at >= word.Length - 1)
        {
            return false;
        }

        Span<char> room = stackalloc char[128];
        foreach (ReadOnlySpan<char> part in (ReadOnlySpan<string>)[word[..at].ToString(), word[(at + 1)..].ToString()])
        {
            if (part.Length > 60)
            {
                return false;
            }

            ReadOnlySpan<char> folded = room[..TextFold.Fold(part, room)];
            if (!words.IsKnown(folded, WordList.Hash(folded)))
            {
                return false;
            }
        }

        return true;
    }

    // E20, 4C, WX4150, 12min: few digits, and letters that are few or a known word.
    private static bool IsShortCode(ReadOnlySpan<char> folded, FileWords words)
    {
        int digits = 0, at = 0;
        while (at < folded.Length)
        {
            int start = at;
            bool digit = char.IsAsciiDigit(folded[at]);
            while (at < folded.Length && char.IsAsciiDigit(folded[at]) == digit)
            {
                at++;
            }

            ReadOnlySpan<char> run = folded[start..at];
            digits += digit ? run.Length : 0;
            if (!digit && run.Length > MostLetters && !words.IsKnown(run, WordList.Hash(run)))
            {
                return false;
            }
        }

        return digits <= MostDigits;
    }

    /// <summary>Cuts a word that is spelled out: four single letters in a row.</summary>
    public static void CutSpelledOut(TextTokens tokens, TextCuts cuts)
    {
        for (int first = 0, i = 0; i <= tokens.Count; i++)
        {
            if (i < tokens.Count && tokens[i].Kind == TokenKind.Word && tokens[i].FoldedLength == 1)
            {
                continue;
            }

            if (i - first >= FewestSpelled)
            {
                cuts.Cut(tokens[first].Start, tokens[i - 1].End, CutKind.Word);
            }

            first = i + 1;
        }
    }

    // A short number beside an unknown word is its house number, a single letter beside a name its initial.
    private static void Spread(TextTokens tokens, TextCuts cuts)
    {
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = 0; i < tokens.Count; i++)
            {
                if (cuts.IsCut(tokens[i].Start) || !(tokens[i].Kind == TokenKind.Number ? !IsCount(tokens, i) : tokens[i].FoldedLength == 1 && char.IsUpper(tokens.Text[tokens[i].Start])))
                {
                    continue;
                }

                if ((i > 0 && cuts.IsCut(tokens[i - 1].End - 1) && IsNear(tokens.Gap(i - 1))) || (i + 1 < tokens.Count && cuts.IsCut(tokens[i + 1].Start) && IsNear(tokens.Gap(i))))
                {
                    cuts.Cut(tokens[i].Start, tokens[i].End, CutKind.Word);
                }
            }
        }
    }

    // Joy & [name]: whoever is named together with a name.
    private static void SpreadOverAnd(TextTokens tokens, TextCuts cuts, FileWords words)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (tokens.Gap(i).Length > 3 || tokens.Gap(i).Trim() is not ("&" or "+"))
            {
                continue;
            }

            (int cut, int kept) = cuts.IsCut(tokens[i].Start) ? (i, i + 1) : (i + 1, i);
            TextToken other = tokens[kept];
            bool isWord = other.Is(WordClass.Function | WordClass.Common | WordClass.Own) || words.IsFrequent(other.Hash) || words.IsTrade(other.Hash)
                || (words.HasNounsInCapitals && !words.IsName(tokens.Folded(kept), other.Hash));
            if (cuts.IsCut(tokens[cut].Start) && tokens[cut].IsCapital && other is { Kind: TokenKind.Word, IsCapital: true } && !isWord)
            {
                cuts.Cut(other.Start, other.End, CutKind.Name);
            }
        }
    }

    private static bool IsCount(TextTokens tokens, int i) => i + 1 < tokens.Count && tokens.Gap(i).Length <= 1 && tokens[i + 1].Is(WordClass.Unit);

    private static bool IsNear(ReadOnlySpan<char> gap) => gap.Length <= 2 && !gap.ContainsAny(";!?\n");
}
