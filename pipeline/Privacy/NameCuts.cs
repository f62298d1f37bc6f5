namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Cuts names that are words as well, told by what stands beside them: a title, "call", "ask for", "says", or a capital
/// within a sentence on a word that is a proper name too.
/// </summary>
internal static class NameCuts
{
    private const int MostWords = 3;
    private const int MostBetween = 2;
    private const WordClass NoName = WordClass.Function | WordClass.Common | WordClass.Call | WordClass.Says | WordClass.Title;

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
            else if (tokens[i].Is(WordClass.Call))
            {
                CutAfter(tokens, cuts, words, i, 1, certain: false, from: -1);
            }

            if (tokens[i].Is(WordClass.Role) && InBrackets(tokens, i) is var first && first > 0)
            {
                CutBefore(tokens, cuts, words, first);
            }

            if (tokens[i].Is(WordClass.Role) && IsLabeled(tokens, i))
            {
                cuts.Cut(tokens[i + 1].Start, tokens[i + 1].End, CutKind.Name);
            }

            if (IsInitial(tokens, words, i))
            {
                cuts.Cut(tokens[i].Start, tokens[i + 1].End, CutKind.Name);
            }

            if (tokens[i].Is(WordClass.Says) && i > 0 && tokens.Gap(i - 1).Length == 1 && MayBeName(tokens, words, i - 1))
            {
                cuts.Cut(tokens[i - 1].Start, tokens[i - 1].End, CutKind.Name);
            }

            if (tokens[i].Is(WordClass.Says) && HasSaid(tokens, i))
            {
                cuts.Cut(tokens[i - 2].Start, tokens[i - 2].End, CutKind.Name);
            }

            if (tokens[i].Is(WordClass.Role) && words.HasNounsInCapitals && NamesPerson(tokens, words, i))
            {
                cuts.Cut(tokens[i + 1].Start, tokens[i + 1].End, CutKind.Name);
            }

            // Where the text begins in small letters, any capital in the middle of a phrase tells a name. Unknown words go anyway.
            if (tokens[i].IsCapital && !tokens[i].OpensSentence && tokens.CapitalsTell && !words.HasNounsInCapitals && !words.IsEveryday(tokens[i].Hash)
                && (IsAlsoName(tokens, words, i) || (tokens.StartsLowercase && tokens.Gap(i - 1) is " " && !IsOrdinary(tokens, words, i) && words.IsListed(tokens.Folded(i), tokens[i].Hash))))
            {
                cuts.Cut(tokens[i].Start, tokens[i].End, CutKind.Name);
            }
        }
    }

    // Baker (tenant), Baker (the son): the first word in the brackets, or 0.
    private static int InBrackets(TextTokens tokens, int role)
    {
        int first = role;
        while (first > 0 && role - first < 2 && !tokens.Gap(first - 1).Contains('(') && tokens[first - 1].Is(WordClass.Function))
        {
            first--;
        }

        return first > 0 && tokens.Gap(first - 1).Contains('(') ? first : 0;
    }

    // Mieter: Lange. Behind a label a name may be an everyday word as well, but a word for a machine or a fault is none.
    private static bool IsLabeled(TextTokens tokens, int role) =>
        role + 1 < tokens.Count && tokens[role + 1] is { Kind: TokenKind.Word, IsCapital: true } next && tokens.Gap(role).ContainsAny(':', '=') && tokens.Gap(role).Length <= 3
        && (!next.Is(WordClass.Own) || next.Is(WordClass.Everyday)) && !next.Is(WordClass.Function | WordClass.Common | WordClass.Call | WordClass.Says);

    // Fuchs hat angerufen, Rossignol a dit: a capital without an article before it. A machine does not call.
    private static bool HasSaid(TextTokens tokens, int said) =>
        said > 1 && PersonalWords.Auxiliary.Contains(tokens[said - 1].Hash) && tokens.Gap(said - 1) is " " && tokens.Gap(said - 2) is " "
        && tokens[said - 2] is { Kind: TokenKind.Word, IsCapital: true, FoldedLength: > 2 } name && !name.Is(NoName | WordClass.Own | WordClass.Role)
        && (name.OpensSentence || !tokens[said - 3].Is(WordClass.Function));

    // Mieterin Lerche, Tochter Heide: where every noun has a capital, a noun that follows a role at once is its name unless
    // it is a word of the trade. A customer begins too many notes: "Kunde Termin verschoben".
    private static bool NamesPerson(TextTokens tokens, FileWords words, int role) =>
        role + 1 < tokens.Count && tokens[role].IsCapital && tokens.Gap(role) is " " && tokens[role + 1] is { Kind: TokenKind.Word, IsCapital: true, FoldedLength: > 2 } next
        && tokens.Folded(role) is not ("kunde" or "kundin") && !next.Is(NoName | WordClass.Own | WordClass.Role) && !words.IsFrequent(next.Hash) && !words.IsTrade(next.Hash);

    // J. Baker.
    private static bool IsInitial(TextTokens tokens, FileWords words, int i) =>
        tokens[i].FoldedLength == 1 && char.IsUpper(tokens.Text[tokens[i].Start]) && i + 1 < tokens.Count && tokens.Gap(i) is "." or ". "
        && tokens[i + 1] is { Kind: TokenKind.Word, IsCapital: true, FoldedLength: > 2 } && !IsOrdinary(tokens, words, i + 1);

    // Short titles are words of other languages too ("m", "p", "fr"): they need a full stop or a capital behind.
    private static bool IsTitle(TextTokens tokens, int i) =>
        tokens[i].Is(WordClass.Title) && i + 1 < tokens.Count && tokens[i + 1].Kind == TokenKind.Word && IsNear(tokens.Gap(i))
        && (tokens[i].FoldedLength > 2 || tokens.Gap(i).Contains('.') || (tokens[i].FoldedLength == 2 && tokens.Folded(i) is not "fr" and not "mm") || (tokens[i].IsCapital | char.IsUpper(tokens.Text[tokens[i].Start]) && tokens[i + 1].IsCapital));

    private static int Asks(TextTokens tokens, int i)
    {
        if (!tokens[i].Is(WordClass.Ask))
        {
            return 0;
        }

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
        bool prepositions = length > 1 || !tokens[at].Is(WordClass.Function);
        while (prepositions && first < tokens.Count && first - at - length < MostBetween && IsNear(tokens.Gap(first - 1)) && tokens[first].Is(WordClass.Function) && !tokens[first].IsCapital)
        {
            certain = false;
            first++;
        }

        for (int k = first; k < tokens.Count && k - first < MostWords && tokens[k].Kind == TokenKind.Word && IsNear(tokens.Gap(k - 1)); k++)
        {
            bool title = tokens[k].Is(WordClass.Title) && tokens[k].FoldedLength > 1;
            bool name = title || (certain && k == first
                ? !tokens[k].Is(WordClass.Function) && !tokens[k].Is(WordClass.Call)
                : (MayBeName(tokens, words, k) && (cut || !IsWordBehindPreposition(tokens, words, at, k))) || (cut && tokens[k].FoldedLength == 1));
            if (!name)
            {
                return;
            }

            cuts.Cut(k == first && from >= 0 ? from : tokens[k].Start, tokens[k].End, CutKind.Name);
            cut = true;
        }
    }

    // Soaked with oil, connects to internet: behind a preposition a word in small letters is a word where the language has it.
    private static bool IsWordBehindPreposition(TextTokens tokens, FileWords words, int at, int k) =>
        tokens[at].Is(WordClass.Function) && char.IsLower(tokens.Text[tokens[k].Start]) && words.IsListed(tokens.Folded(k), tokens[k].Hash);

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
        tokens[k].Is(WordClass.Common | WordClass.Function | WordClass.Call | WordClass.Says | WordClass.Own) || words.IsFrequent(tokens[k].Hash);

    private static bool IsNear(ReadOnlySpan<char> gap) => gap.Length is >= 1 and <= 3 && !gap.ContainsAny(";!?\n()[]/");
}
