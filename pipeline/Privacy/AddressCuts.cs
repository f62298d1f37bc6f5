namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Cuts street addresses, told by a house number beside words for streets: <c>12 Mill Road</c>, <c>12 rue de la Paix</c>,
/// <c>via Roma 5</c>, <c>Xaverstr. 13</c>. A number that counts or measures (<c>12 min</c>) is no house number.
/// </summary>
internal static class AddressCuts
{
    private const int MostBetween = 4;
    private const int ShortestOfSquare = 4;
    private static readonly HashSet<string> Clear = new(StringComparer.Ordinal)
    {
        "street", "str", "st", "road", "rd", "avenue", "ave", "av", "lane", "ln", "crescent", "terrace", "boulevard", "blvd", "gardens", "grove", "quay", "quayside", "mews", "alley", "parade", "wharf",
        "moorings", "villas", "cottages", "esplanade", "promenade", "embankment", "highway", "parkway", "strasse", "weg", "gasse", "platz", "allee", "straat", "laan", "plein", "gracht", "utca", "gatan",
        "vagen", "vej", "gade", "veien", "katu", "tie",
    };

    private static readonly HashSet<string> Homes = new(StringComparer.Ordinal) { "flat", "apt", "apartment", "suite", "box", "wohnung", "appt", "piso", "interno", "mieszkanie" };

    /// <summary>Cuts what a text holds of them.</summary>
    public static void Apply(TextTokens tokens, TextCuts cuts, FileWords words)
    {
        for (int i = 0; i < tokens.Count && tokens.HasDigits; i++)
        {
            if (tokens[i].Kind != TokenKind.Word && IsHouseNumber(tokens, i))
            {
                After(tokens, cuts, words, i);
                Before(tokens, cuts, words, i);
            }
        }

        Squares(tokens, cuts);
    }

    // mellow.harbor.tulip: three words with nothing but dots between stand for one square of the map.
    private static void Squares(TextTokens tokens, TextCuts cuts)
    {
        for (int i = 0; i + 2 < tokens.Count; i++)
        {
            if (tokens.Gap(i) is "." && tokens.Gap(i + 1) is "." && IsOfSquare(tokens, i) && IsOfSquare(tokens, i + 1) && IsOfSquare(tokens, i + 2))
            {
                cuts.Cut(tokens[i].Start, tokens[i + 2].End, CutKind.Address);
            }
        }
    }

    private static bool IsOfSquare(TextTokens tokens, int i) =>
        tokens[i] is { Kind: TokenKind.Word, FoldedLength: >= ShortestOfSquare } word && char.IsLower(tokens.Text[word.Start]) && !word.Is(WordClass.Function | WordClass.Common | WordClass.Own);

    // Twelve, 12a, 12/3; not a count, not a code with letters before.
    private static bool IsHouseNumber(TextTokens tokens, int i)
    {
        ReadOnlySpan<char> text = tokens.Folded(i);
        int digits = text.IndexOfAnyExceptInRange('0', '9');
        digits = digits < 0 ? text.Length : digits;
        return digits is >= 1 and <= 5 && (digits == text.Length || text.Length - digits == 1 || text[digits..] is "bis" or "ter")
            && !(i + 1 < tokens.Count && tokens.Gap(i).Length <= 1 && tokens[i + 1].Is(WordClass.Unit));
    }

    // 12 Mill Road; 12 rue de la Paix.
    private static void After(TextTokens tokens, TextCuts cuts, FileWords words, int number)
    {
        for (int j = number + 1; j < tokens.Count && j - number <= MostBetween && Joins(tokens.Gap(j - 1)); j++)
        {
            bool only = j == number + 1;
            if ((only || (j == number + 2 && (tokens[number + 1].FoldedLength == 1 || tokens.Folded(number + 1) is "bis" or "ter"))) && tokens[j].Is(WordClass.StreetBefore) && StreetName(tokens, words, j) is var end && end > j)
            {
                cuts.Cut(tokens[number].Start, tokens[end].End, CutKind.Address);
                return;
            }

            bool clear = IsStreetWord(tokens, j, out bool joined);
            if ((clear && (joined || !only || tokens.Count > j)) || (!only && tokens[j].Is(WordClass.StreetAfter)))
            {
                if (!only || joined || Clear.Contains(tokens.Folded(j).ToString()))
                {
                    int last = j + 2 < tokens.Count && Homes.Contains(tokens.Folded(j + 1).ToString()) ? j + 2 : j;
                    cuts.Cut(tokens[number].Start, tokens[last].End, CutKind.Address);
                    return;
                }
            }

            if (tokens[j].Kind == TokenKind.Number || (IsPlain(tokens, j) && tokens[j].Is(WordClass.Function)) || tokens[j].Is(WordClass.Unit))
            {
                return;
            }
        }
    }

    // via Roma 12; Xaverstr. 13; Long Street 5.
    private static void Before(TextTokens tokens, TextCuts cuts, FileWords words, int number)
    {
        for (int j = number - 1; j >= 0 && number - j <= MostBetween + 1 && Joins(tokens.Gap(j)); j--)
        {
            if (j == number - 1 && Homes.Contains(tokens.Folded(j).ToString()))
            {
                cuts.Cut(tokens[j].Start, tokens[number].End, CutKind.Address);
                return;
            }

            bool street = IsStreetWord(tokens, j, out bool joined);
            if (street && j >= number - 2)
            {
                int first = j;
                while (!joined && first > 0 && j - first < 2 && Joins(tokens.Gap(first - 1)) && IsName(tokens, words, first - 1))
                {
                    first--;
                }

                if (joined || first < j)
                {
                    cuts.Cut(tokens[first].Start, tokens[number].End, CutKind.Address);
                    return;
                }
            }

            if (j < number - 1 && IsStreetOpening(tokens, j, out int name) && name < number && Enumerable.Range(name, number - name).All(k => IsName(tokens, words, k) || IsParticle(tokens, k)))
            {
                cuts.Cut(tokens[j].Start, tokens[number].End, CutKind.Address);
                return;
            }
        }
    }

    private static bool IsStreetOpening(TextTokens tokens, int j, out int name)
    {
        name = j + 1;
        if (tokens[j].Is(WordClass.StreetBefore))
        {
            return true;
        }

        name = j + 2;
        return j + 1 < tokens.Count && PersonalWords.StreetBefore.Contains(tokens.Phrase(j, 2));
    }

    // Behind the street word: particles, one word of any kind, and further ones that look like a name.
    private static int StreetName(TextTokens tokens, FileWords words, int type)
    {
        int end = type;
        bool named = false;
        for (int k = type + 1; k < tokens.Count && k - type <= 7 && Joins(tokens.Gap(k - 1)) && !tokens.Gap(k - 1).Contains(',') && tokens[k].Kind == TokenKind.Word; k++)
        {
            bool particle = IsParticle(tokens, k);
            if (named && !particle && !IsName(tokens, words, k))
            {
                break;
            }

            if (!particle)
            {
                (end, named) = (k, true);
            }
        }

        return end;
    }

    private static bool IsStreetWord(TextTokens tokens, int j, out bool joined)
    {
        ReadOnlySpan<char> word = tokens.Folded(j);
        foreach (string ending in PersonalWords.StreetEnds)
        {
            if (word.Length >= ending.Length + 3 && word.EndsWith(ending))
            {
                joined = true;
                return true;
            }
        }

        joined = false;
        return tokens[j].Is(WordClass.StreetAfter);
    }

    private static bool IsName(TextTokens tokens, FileWords words, int k) =>
        tokens[k].Kind == TokenKind.Word && !(IsPlain(tokens, k) && tokens[k].Is(WordClass.Function)) && ((tokens[k].IsCapital && tokens.CapitalsTell) || !words.IsKnown(tokens.Folded(k), tokens[k].Hash));

    private static bool IsParticle(TextTokens tokens, int k) => tokens.Folded(k) is "de" or "la" or "le" or "les" or "du" or "des" or "del" or "della" or "dei" or "di" or "da" or "do" or "dos" or "das" or "l" or "d" or "el" or "los" or "las" or "van" or "der" or "den" or "sw" or "gen" or "dr" or "marszalka";

    private static bool IsPlain(TextTokens tokens, int k) => !tokens[k].IsCapital || !tokens.CapitalsTell;

    private static bool Joins(ReadOnlySpan<char> gap) => gap.Length <= 3 && !gap.ContainsAny(";!?\n:") && !gap.Contains(". . ", StringComparison.Ordinal);
}
