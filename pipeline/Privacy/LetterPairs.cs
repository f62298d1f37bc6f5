using System.Buffers;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Which pairs of neighbouring ASCII characters a text holds, blind to case and drawn together to 128 marks (a Bloom
/// filter with one hash): what needs a pair that is not marked cannot stand in it. A text with other characters may hold
/// anything.
/// </summary>
internal readonly record struct LetterPairs
{
    private const int CaseBit = 0x20;
    private const int Spread = 37;
    private readonly ulong _low;
    private readonly ulong _high;

    private LetterPairs(ulong low, ulong high) => (_low, _high) = (low, high);

    /// <summary>The pairs of a text.</summary>
    public static LetterPairs Create(ReadOnlySpan<char> text)
    {
        Span<ulong> marks = [0, 0];
        char before = '\0';
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (c >= 128)
            {
                return new LetterPairs(ulong.MaxValue, ulong.MaxValue);
            }

            if (i > 0)
            {
                int mark = Mark(before, c);
                marks[mark >> 6 & 1] |= 1UL << (mark & 63);
            }

            before = c;
        }

        return new LetterPairs(marks[0], marks[1]);
    }

    /// <summary>False when the text cannot hold this one, however its letters are written.</summary>
    public bool MayHold(ReadOnlySpan<char> part)
    {
        for (int i = 1; i < part.Length; i++)
        {
            (char before, char c) = (part[i - 1], part[i]);
            int mark = Mark(before, c);
            if ((before | c) < 128 && ((((mark & 64) == 0 ? _low : _high) >> (mark & 63)) & 1) == 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>False when the text can hold none of these words; where all are too short to count alone, when it cannot hold the whole.</summary>
    /// <param name="words">Words, such as a name; blanks around them do not count.</param>
    /// <param name="breaks">Characters between words.</param>
    /// <param name="shortest">Words of fewer characters do not count alone.</param>
    public bool MayHoldAny(ReadOnlySpan<char> words, SearchValues<char> breaks, int shortest)
    {
        bool counted = false;
        words = words.Trim();
        ReadOnlySpan<char> rest = words;
        while (!rest.IsEmpty)
        {
            int end = rest.IndexOfAny(breaks);
            ReadOnlySpan<char> word = end < 0 ? rest : rest[..end];
            if (word.Length >= shortest)
            {
                counted = true;
                if (MayHold(word))
                {
                    return true;
                }
            }

            rest = end < 0 ? [] : rest[(end + 1)..];
        }

        return !counted && !words.IsEmpty && MayHold(words);
    }

    private static int Mark(char before, char c) => ((before | CaseBit) * Spread) + (c | CaseBit);
}
