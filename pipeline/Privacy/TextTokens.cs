using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>What a piece of text is made of.</summary>
internal enum TokenKind
{
    /// <summary>Letters.</summary>
    Word,

    /// <summary>Digits.</summary>
    Number,

    /// <summary>Letters and digits.</summary>
    Mixed,
}

/// <summary>A run of letters and digits.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="End">The place behind its last.</param>
/// <param name="Kind">What it is made of.</param>
/// <param name="Hash">Hash of its folded form.</param>
/// <param name="FoldedAt">Where its folded form begins.</param>
/// <param name="FoldedLength">How long that is.</param>
/// <param name="IsCapital">True when it begins with a capital and goes on in small letters.</param>
/// <param name="OpensSentence">True when it is the first of the text or follows a full stop.</param>
/// <param name="Classes">What it may be beside names, numbers and streets.</param>
internal readonly record struct TextToken(int Start, int End, TokenKind Kind, ulong Hash, int FoldedAt, int FoldedLength, bool IsCapital, bool OpensSentence, WordClass Classes)
{
    /// <summary>True for a word of one of these classes.</summary>
    public bool Is(WordClass any) => (Classes & any) != 0;
}

/// <summary>A text in runs of letters and digits, with their folded forms. An apostrophe belongs to its word.</summary>
internal sealed class TextTokens
{
    private const int Usual = 64;
    private readonly TextToken[] _all;
    private readonly char[] _folded;
    private readonly ulong _ends;
    private readonly ulong _letters;

    /// <summary>Cuts a text.</summary>
    public TextTokens(string text)
    {
        Text = text;
        Span<char> folded = text.Length <= Usual * 4 ? stackalloc char[text.Length * 2] : new char[text.Length * 2];

        // Between two tokens stands at least one character.
        int most = (text.Length / 2) + 1;
        Span<TextToken> tokens = most <= Usual ? stackalloc TextToken[most] : new TextToken[most];
        int used = 0, count = 0, capitals = 0, words = 0;
        bool opens = true;
        for (int i = 0; i < text.Length;)
        {
            if (!TextFold.IsWordPart(text[i]) && TextFold.Digit(text[i]) < 0)
            {
                opens |= text[i] is '.' or '!' or '?' or ':' or '\n';
                i++;
                continue;
            }

            int start = i;
            (bool letters, bool digits, bool small) = (false, false, false);
            while (i < text.Length && Belongs(text, i))
            {
                bool digit = TextFold.Digit(text[i]) >= 0;
                digits |= digit;
                letters |= !digit && !TextFold.IsApostrophe(text[i]);
                small |= i > start && char.IsLower(text[i]);
                i++;
            }

            int length = TextFold.Fold(text.AsSpan(start, i - start), folded[used..]);
            bool capital = small && char.IsUpper(text[start]);
            TokenKind kind = !digits ? TokenKind.Word : letters ? TokenKind.Mixed : TokenKind.Number;
            ulong hash = WordList.Hash(folded.Slice(used, length));
            tokens[count++] = new TextToken(start, i, kind, hash, used, length, capital, opens, PersonalWords.Classes.Of(hash));
            HasDigits |= digits;
            (capitals, words) = (capitals + (capital && !opens ? 1 : 0), words + (kind == TokenKind.Word && !opens ? 1 : 0));
            used += length;
            opens = false;
        }

        (_all, _folded) = (tokens[..count].ToArray(), folded[..used].ToArray());
        _letters = LettersOf(_folded);
        CapitalsTell = capitals * 2 <= words;
        StartsLowercase = count > 0 && char.IsLower(text[tokens[0].Start]);
        foreach (ref readonly TextToken token in _all.AsSpan())
        {
            Mask |= MaskOf(token.Hash);
            HasUncommon |= token.Kind != TokenKind.Number && !token.Is(WordClass.Own | WordClass.Common | WordClass.Function);
            _ends |= token.FoldedLength > 0 ? EndsOf(_folded[token.FoldedAt], _folded[token.FoldedAt + token.FoldedLength - 1]) : 0;
        }
    }

    /// <summary>The text.</summary>
    public string Text { get; }

    /// <summary>Number of tokens.</summary>
    public int Count => _all.Length;

    /// <summary>True when a digit of any script stands in it.</summary>
    public bool HasDigits { get; }

    /// <summary>False where most words begin with a capital, so that one more says nothing.</summary>
    public bool CapitalsTell { get; }

    /// <summary>True where a token is neither a number nor a word that everybody needs.</summary>
    public bool HasUncommon { get; }

    /// <summary>One bit of each token's hash: a word whose bit is not set is none of them.</summary>
    public ulong Mask { get; }

    /// <summary>The bit of a hash in <see cref="Mask"/>.</summary>
    public static ulong MaskOf(ulong hash) => 1UL << (int)(hash >> 58);

    /// <summary>False where no token begins and ends as this word does, in small letters or capitals.</summary>
    public bool MayHold(ReadOnlySpan<char> word) => !char.IsAsciiLetter(word[0]) || !char.IsAsciiLetter(word[^1]) || (_ends & EndsOf(word[0], word[^1])) != 0;

    /// <summary>A bit for each letter of a folded word; letters of other scripts may share one.</summary>
    public static ulong LettersOf(ReadOnlySpan<char> folded)
    {
        ulong letters = 0;
        foreach (char c in folded)
        {
            letters |= 1UL << (c & 63);
        }

        return letters;
    }

    /// <summary>How many of these letters, as <see cref="LettersOf"/> tells them, the text lacks, at least: no fewer edits make a word with them out of what it holds.</summary>
    public int Lacks(ulong letters) => System.Numerics.BitOperations.PopCount(letters & ~_letters);

    /// <summary>True where the first word begins with a small letter: a capital behind it is no habit.</summary>
    public bool StartsLowercase { get; }

    /// <summary>A token.</summary>
    public ref readonly TextToken this[int i] => ref _all[i];

    /// <summary>Its folded form.</summary>
    public ReadOnlySpan<char> Folded(int i) => _folded.AsSpan(_all[i].FoldedAt, _all[i].FoldedLength);

    /// <summary>Hash of several tokens joined with blanks.</summary>
    public ulong Phrase(int first, int count)
    {
        Span<char> room = stackalloc char[96];
        int n = 0;
        for (int i = first; i < first + count; i++)
        {
            ReadOnlySpan<char> word = Folded(i);
            if (n + word.Length + 1 > room.Length)
            {
                return 0;
            }

            if (i > first)
            {
                room[n++] = ' ';
            }

            word.CopyTo(room[n..]);
            n += word.Length;
        }

        return WordList.Hash(room[..n]);
    }

    /// <summary>The text between a token and the next.</summary>
    public ReadOnlySpan<char> Gap(int i) => i + 1 < _all.Length ? Text.AsSpan(_all[i].End, _all[i + 1].Start - _all[i].End) : Text.AsSpan(_all[i].End);

    private static ulong EndsOf(char first, char last) => 1UL << ((((first & 31) * 5) + (last & 31)) & 63);

    private static bool Belongs(string text, int i) =>
        TextFold.IsWordPart(text[i]) || TextFold.Digit(text[i]) >= 0
        || (TextFold.IsApostrophe(text[i]) && i + 1 < text.Length && TextFold.IsWordPart(text[i + 1]));
}
