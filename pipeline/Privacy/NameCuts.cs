namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Cuts names that are words as well, told by what stands beside them: a title, "call", "ask for", "says", or a capital
/// within a sentence on a word that is a proper name too.
/// </summary>
internal static class NameCuts
{
    private const int MostWords = 3;
    private const int MostBetween = 2;

    /// <summary>Cuts what a text holds of them.</summary>
    public static void Apply(TextTokens tokens, TextCuts cuts, FileWords words)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Kind != TokenKind.Word)
            {
                continue;
            }

            if (IsTitle(tokens, i))
            {
                CutAfter(tokens, cuts, words, i, 1, certain: true, from: tokens[i].Start);
            }
            else if (Asks(tokens, i) is var length && length > 0)
            {
                CutAfter(tokens, cuts, words, i, length, certain: true, from: -1);
            }
            else if (PersonalWords.Call.Contains(tokens[i].Hash))
            {
                CutAfter(tokens, cuts, words, i, 1, certain: false, from: -1);
            }

            if (PersonalWords.Roles.Contains(tokens[i].Hash) && i > 0 && tokens.Gap(i - 1).Contains('('))
            {
                CutBefore(tokens, cuts, words, i);
            }

            if (PersonalWords.Says.Contains(tokens[i].Hash) && i > 0 && tokens.Gap(i - 1).Length == 1 && MayBeName(tokens, words, i - 1))
            {
                cuts.Cut(tokens[i - 1].Start, tokens[i - 1].End, CutKind.Name);
            }

            if (tokens[i].IsCapital && !tokens[i].OpensSentence && tokens.CapitalsTell && !words.HasNounsInCapitals && !words.IsEveryday(tokens[i].Hash) && IsAlsoName(tokens, words, i))
            {
                cuts.Cut(tokens[i].Start, tokens[i].End, CutKind.Name);
            }
        }
    }

    // Short titles are words of other languages too ("m", "p", "fr"): they need a full stop or a capital behind.
    private static bool IsTitle(TextTokens tokens, int i) =>
        PersonalWords.Titles.Contains(tokens[i].Hash) && i + 1 < tokens.Count && tokens[i + 1].Kind == TokenKind.Word && IsNear(tokens.Gap(i))
        && (tokens[i].FoldedLength > 2 || tokens.Gap(i).Contains('.') || (tokens[i].FoldedLength == 2 && tokens.Folded(i) is not "fr" and not "mm") || (tokens[i].IsCapital | char.IsUpper(tokens.Text[tokens[i].Start]) && tokens[i + 1].IsCapital));

    private static int Asks(TextTokens tokens, int i)
    {
        for (int length = Math.Min(3, tokens.Count - i); length > 0; length--)
        {
            if (PersonalWords.Ask.Contains(tokens.Phrase(i, length)))
            {
                return length;
            }
        }

        return 0;
    }

    private static void CutAfter(TextTokens tokens, TextCuts cuts, FileWords words, int at, int length, bool certain, int from)
    {
        int first = at + length;
        bool cut = false;

        // Call for Baker, dzwonić do Kowal: small words may stand between, but then the next word is no name for certain.
        bool prepositions = length > 1 || !PersonalWords.Function.Contains(tokens[at].Hash);
        while (prepositions && first < tokens.Count && first - at - length < MostBetween && IsNear(tokens.Gap(first - 1)) && PersonalWords.Function.Contains(tokens[first].Hash) && !tokens[first].IsCapital)
        {
            certain = false;
            first++;
        }

        for (int k = first; k < tokens.Count && k - first < MostWords && tokens[k].Kind == TokenKind.Word && IsNear(tokens.Gap(k - 1)); k++)
        {
            bool title = PersonalWords.Titles.Contains(tokens[k].Hash) && tokens[k].FoldedLength > 1;
            bool name = title || (certain && k == first
                ? !PersonalWords.Function.Contains(tokens[k].Hash) && !PersonalWords.Call.Contains(tokens[k].Hash)
                : MayBeName(tokens, words, k) || (cut && tokens[k].FoldedLength == 1));
            if (!name)
            {
                return;
            }

            cuts.Cut(k == first && from >= 0 ? from : tokens[k].Start, tokens[k].End, CutKind.Name);
            cut = true;
        }
    }

    // Baker (tenant).
    private static void CutBefore(TextTokens tokens, TextCuts cuts, FileWords words, int role)
    {
        for (int k = role - 1; k >= 0 && role - k <= MostWords && tokens[k].Kind == TokenKind.Word && (k == role - 1 || IsNear(tokens.Gap(k))) && MayBeName(tokens, words, k); k--)
        {
            cuts.Cut(tokens[k].Start, tokens[k].End, CutKind.Name);
        }
    }

    // A capital within a sentence, or a word that is a proper name as well, unless everybody needs it. Unknown words go
    // anyway, but a misspelt one still tells the kind of a complaint.
    private static bool MayBeName(TextTokens tokens, FileWords words, int k) =>
        tokens[k].Kind == TokenKind.Word && tokens[k].FoldedLength > 1
        && (IsAlsoName(tokens, words, k)
            || (tokens[k].IsCapital && (tokens.CapitalsTell || tokens.StartsLowercase) && !tokens[k].OpensSentence && !IsOrdinary(tokens, words, k) && !words.HasNounsInCapitals));

    private static bool IsAlsoName(TextTokens tokens, FileWords words, int k) =>
        !IsOrdinary(tokens, words, k) && words.IsName(tokens.Folded(k), tokens[k].Hash);

    private static bool IsOrdinary(TextTokens tokens, FileWords words, int k) =>
        PersonalWords.Common.Contains(tokens[k].Hash) || PersonalWords.Function.Contains(tokens[k].Hash) || PersonalWords.Call.Contains(tokens[k].Hash) || PersonalWords.Says.Contains(tokens[k].Hash)
        || PersonalWords.Own.Words.Contains(tokens[k].Hash) || words.IsFrequent(tokens[k].Hash);

    private static bool IsNear(ReadOnlySpan<char> gap) => gap.Length is >= 1 and <= 3 && !gap.ContainsAny(";!?\n()[]/");
}
