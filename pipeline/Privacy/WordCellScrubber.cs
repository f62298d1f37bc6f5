namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Judges a cell of a column of words: a brand, a technician, a van, a supplier. A value stays when enough customers of
/// the file have it, or when all of it is known words and codes. A rare one may be somebody's name in the wrong column.
/// </summary>
internal static class WordCellScrubber
{
    // A van or a branch goes by a short code. A long one may be a phone number.
    private const int LongestCode = 8;

    /// <summary>What to do with a value.</summary>
    /// <param name="cell">The cell, not empty.</param>
    /// <param name="field">Name of its field.</param>
    /// <param name="people">True for a column of the shop's own people, where a name is what it should hold.</param>
    /// <param name="words">Words of the file.</param>
    public static WordVerdict Judge(string cell, string field, bool people, FileWords words)
    {
        var tokens = new TextTokens(cell);
        var cuts = new TextCuts(cell);
        EmailCuts.Apply(tokens, cuts);
        NumberCuts.Apply(tokens, cuts);
        AddressCuts.Apply(tokens, cuts, words);
        TextScrubber.CutSpelledOut(tokens, cuts);
        if (!cuts.IsNone)
        {
            return WordVerdict.Personal;
        }

        if (words.Values.Contains(field + '\t' + cell) || words.IsSlipOfValue(cell, field))
        {
            return WordVerdict.Stays;
        }

        NameCuts.Apply(tokens, cuts, words);
        bool known = cuts.IsNone, name = !cuts.IsNone;
        int unknown = 0;
        for (int i = 0; i < tokens.Count; i++)
        {
            bool stays = TextScrubber.MayStay(tokens, i, words) || (tokens[i].FoldedLength <= LongestCode && CodeScrubber.IsCodePart(tokens, i, words));
            known &= stays;
            unknown += stays ? 0 : 1;
            name |= !tokens[i].Is(WordClass.Own) && tokens[i].Kind == TokenKind.Word && tokens[i].FoldedLength > 2 && words.IsName(tokens.Folded(i), tokens[i].Hash);
        }

        // A short file has too few rows for five customers per brand; there a single word passes that is no known name.
        return known && !name ? WordVerdict.Stays
            : words.Fewest > 1 ? WordVerdict.Rare
            : people || (unknown <= 1 && !name) ? WordVerdict.StaysUnlessCustomer
            : WordVerdict.Rare;
    }
}

/// <summary>What becomes of a value in a column of words.</summary>
internal enum WordVerdict
{
    /// <summary>It stays.</summary>
    Stays,

    /// <summary>It stays unless the row's own customer is called so.</summary>
    StaysUnlessCustomer,

    /// <summary>It counts as unknown unless enough customers of the file have it.</summary>
    Rare,

    /// <summary>It counts as unknown: it holds a number or an address of somebody.</summary>
    Personal,
}
