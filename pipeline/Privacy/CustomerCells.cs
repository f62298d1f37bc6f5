using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// The words of a row's own customer, looked for in a text of the row: as typed, with a slip, without diacritics, in
/// pieces or joined. Not for two threads at a time.
/// </summary>
internal sealed class CustomerCells
{
    private const int ShortestSlip = 5;
    private const int LongSlip = 9;
    private const int MostWords = 24;
    private const int ShortestOfAddress = 3;
    private readonly char[] _folded = new char[2_048];
    private readonly (int At, int Length, ulong Hash)[] _words = new (int, int, ulong)[MostWords];
    private readonly ulong[] _letters = new ulong[MostWords];
    private readonly int[] _near = new int[MostWords];
    private readonly List<Range> _addressWords = [];
    private bool _knowsAddress;
    private int _used;
    private int _usedByNames;
    private int _count;
    private int _names;

    /// <summary>Takes the names of a row.</summary>
    /// <param name="name">The name.</param>
    /// <param name="email">The e-mail address, which mostly holds the name.</param>
    public void SetNames(ReadOnlySpan<char> name, ReadOnlySpan<char> email)
    {
        (_used, _count, _knowsAddress) = (0, 0, false);
        AddName(name, 2);
        int at = email.IndexOf('@');
        AddName(at > 0 ? email[..at] : default, 4);
        (_usedByNames, _names) = (_used, _count);
        for (int w = 0; w < _names; w++)
        {
            _letters[w] = TextTokens.LettersOf(Word(w));
        }
    }

    /// <summary>Takes the address of the row whose names it has.</summary>
    /// <param name="address">The address, the same for all texts of the row; only its words that the text has are of use.</param>
    /// <param name="text">The text.</param>
    public void SetAddress(ReadOnlySpan<char> address, TextTokens text)
    {
        (_used, _count) = (_usedByNames, _names);
        if (!_knowsAddress)
        {
            _knowsAddress = true;
            _addressWords.Clear();
            for (int at = 0; NextWord(address, ref at, ShortestOfAddress, out Range word);)
            {
                _addressWords.Add(word);
            }
        }

        foreach (Range range in _addressWords)
        {
            ReadOnlySpan<char> word = address[range];
            if (text.MayHold(word) && Fold(word) is var (length, hash) && length >= ShortestOfAddress && (text.Mask & TextTokens.MaskOf(hash)) != 0 && !IsNoName(hash))
            {
                Keep(length, hash);
            }
        }
    }

    /// <summary>The text without them; the same instance when it holds none.</summary>
    /// <param name="tokens">The text.</param>
    public string Remove(TextTokens tokens)
    {
        int near = FindNear(tokens);
        if (near == 0 && _count == _names)
        {
            return tokens.Text;
        }

        TextCuts? cuts = null;
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Kind == TokenKind.Number)
            {
                continue;
            }

            if (Names(tokens, i, near) is var length && length > 0)
            {
                (cuts ??= new TextCuts(tokens.Text)).Cut(tokens[i].Start, tokens[i + length - 1].End, CutKind.Name);
            }
            else if (_count > _names && Places(tokens, i) is var words && words > 0)
            {
                int first = i > 0 && tokens[i - 1].Kind != TokenKind.Word && tokens[i - 1].FoldedLength <= 5 && tokens.Gap(i - 1).Length <= 2 ? i - 1 : i;
                (cuts ??= new TextCuts(tokens.Text)).Cut(tokens[first].Start, tokens[i + words - 1].End, CutKind.Address);
            }
        }

        return cuts is null ? tokens.Text : cuts.Apply().Replace("[address], [address]", "[address]", StringComparison.Ordinal).Replace("[name] [name]", "[name]", StringComparison.Ordinal);
    }

    /// <summary>True when a text is or holds one of the customer's names.</summary>
    public bool IsIn(TextTokens tokens)
    {
        int near = FindNear(tokens);
        for (int i = 0; i < tokens.Count && near > 0; i++)
        {
            if (tokens[i].Kind != TokenKind.Number && Names(tokens, i, near) > 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Adds the words of a name, without articles and titles.</summary>
    public void AddWords(ReadOnlySpan<char> name, HashSet<ulong> words)
    {
        SetNames(name, []);
        foreach ((_, _, ulong hash) in _words.AsSpan(0, _count))
        {
            if (!IsNoName(hash))
            {
                words.Add(hash);
            }
        }
    }

    // All words of a name but those that are there already.
    private void AddName(ReadOnlySpan<char> cell, int shortest)
    {
        for (int at = 0; NextWord(cell, ref at, shortest, out Range word);)
        {
            if (Fold(cell[word]) is var (length, hash) && length >= shortest && !IsKnown(hash))
            {
                Keep(length, hash);
            }
        }
    }

    // The next run of letters and apostrophes that is long enough.
    private static bool NextWord(ReadOnlySpan<char> cell, ref int at, int shortest, out Range word)
    {
        int start = at;
        for (int i = at; i <= cell.Length; i++)
        {
            if (i < cell.Length && (TextFold.IsWordPart(cell[i]) || TextFold.IsApostrophe(cell[i])))
            {
                continue;
            }

            if (i - start >= shortest)
            {
                (word, at) = (start..i, i + 1);
                return true;
            }

            start = i + 1;
        }

        word = default;
        return false;
    }

    // Length and hash of a word, folded behind those that are kept; a length of zero where there is no room.
    private (int Length, ulong Hash) Fold(ReadOnlySpan<char> word)
    {
        if (_count == MostWords || _used + (word.Length * 2) > _folded.Length)
        {
            return default;
        }

        int length = TextFold.Fold(word, _folded.AsSpan(_used));
        return (length, WordList.Hash(_folded.AsSpan(_used, length)));
    }

    private void Keep(int length, ulong hash)
    {
        _words[_count++] = (_used, length, hash);
        _used += length;
    }

    // Which words of the name the text may hold, even misspelled: one slip adds at most one letter that the text lacks, and
    // a common word is never a misspelled name.
    private int FindNear(TextTokens tokens)
    {
        int near = 0;
        for (int w = 0; w < _names; w++)
        {
            if (tokens.Lacks(_letters[w]) <= (tokens.HasUncommon ? MostSlips(_words[w].Length) : 0))
            {
                _near[near++] = w;
            }
        }

        return near;
    }

    private static int MostSlips(int length) => length >= LongSlip ? 2 : length >= ShortestSlip ? 1 : 0;

    private static bool IsNoName(ulong hash) => (PersonalWords.Classes.Of(hash) & (WordClass.Function | WordClass.Title)) != 0;

    private bool IsKnown(ulong hash)
    {
        for (int w = 0; w < _count; w++)
        {
            if (_words[w].Hash == hash)
            {
                return true;
            }
        }

        return false;
    }

    // How many tokens from here make a word of the name: one, or pieces of one.
    private int Names(TextTokens tokens, int i, int near)
    {
        ReadOnlySpan<char> typed = tokens.Folded(i);
        bool vouched = tokens[i].Is(WordClass.Own | WordClass.Common | WordClass.Function);
        foreach (int w in _near.AsSpan(0, near))
        {
            ReadOnlySpan<char> word = Word(w);

            // With another first letter it is a slip or holds the name: never for a short name, nor for most known words.
            if (typed.IsEmpty || (typed[0] != word[0] && (word.Length < ShortestSlip || typed.Length < ShortestSlip - 1 || (vouched && typed.Length <= word.Length))))
            {
                continue;
            }

            if (typed.SequenceEqual(word) || IsSame(typed, word, vouched))
            {
                // A title or an article of the cell is no name; few texts hold one, so only what is found is asked about.
                if (IsNoName(_words[w].Hash))
                {
                    continue;
                }

                return 1;
            }

            if (word.Length > typed.Length && word[0] == typed[0] && Pieces(tokens, i, word) is var pieces && pieces > 1 && !IsNoName(_words[w].Hash))
            {
                return pieces;
            }
        }

        return 0;
    }

    // Two or more words of the address in a row.
    private int Places(TextTokens tokens, int i)
    {
        int length = 0;
        while (i + length < tokens.Count && IsPlace(tokens[i + length].Hash) && (length == 0 || tokens.Gap(i + length - 1).Length <= 3))
        {
            length++;
        }

        return length >= 2 ? length : length == 1 && tokens[i].IsCapital && tokens.CapitalsTell && !tokens[i].OpensSentence && !tokens[i].Is(WordClass.Own) ? 1 : 0;
    }

    private bool IsPlace(ulong hash)
    {
        for (int w = _names; w < _count; w++)
        {
            if (_words[w].Hash == hash)
            {
                return true;
            }
        }

        return false;
    }

    // A slip in a word of five letters or more, an umlaut in two letters, the possessive, the name glued to another word.
    private static bool IsSame(ReadOnlySpan<char> typed, ReadOnlySpan<char> word, bool isVouched)
    {
        if (word.Length < 3 || typed.Length < 3)
        {
            return false;
        }

        if (typed.Length == word.Length + 1 && typed[^1] == 's' && typed.StartsWith(word))
        {
            return true;
        }

        if (word.Length < ShortestSlip || typed.Length < ShortestSlip - 1)
        {
            return false;
        }

        int most = MostSlips(word.Length);
        return (!isVouched && Math.Abs(typed.Length - word.Length) <= most && MayBeNear(typed, word) && StringDistance.OptimalAlignment(typed, word, most) <= most)
            || (typed.Length > word.Length && typed.Contains(word, StringComparison.Ordinal));
    }

    // Slips move few letters: most of the beginning or of the end stays.
    private static bool MayBeNear(ReadOnlySpan<char> typed, ReadOnlySpan<char> word)
    {
        int start = typed.CommonPrefixLength(word);
        int end = 0;
        while (end < typed.Length - start && end < word.Length - start && typed[^(end + 1)] == word[^(end + 1)])
        {
            end++;
        }

        return start + end + 4 >= word.Length;
    }

    private static int Pieces(TextTokens tokens, int i, ReadOnlySpan<char> word)
    {
        int used = 0, n = 0;
        while (i + n < tokens.Count && used < word.Length && n < 4)
        {
            ReadOnlySpan<char> piece = tokens.Folded(i + n);
            if (!word[used..].StartsWith(piece) || (n > 0 && tokens.Gap(i + n - 1).Length > 2))
            {
                return 0;
            }

            used += piece.Length;
            n++;
        }

        return used == word.Length ? n : 0;
    }

    private ReadOnlySpan<char> Word(int w) => _folded.AsSpan(_words[w].At, _words[w].Length);
}
