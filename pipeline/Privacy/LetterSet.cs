namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Which ASCII characters a text holds, blind to case: what needs another one cannot stand in it. A text with other
/// characters may hold anything.
/// </summary>
public readonly record struct LetterSet
{
    private const int CaseBit = 0x20;
    private readonly UInt128 _held;

    private LetterSet(UInt128 held) => _held = held;

    /// <summary>The characters of a text.</summary>
    public static LetterSet Of(ReadOnlySpan<char> text)
    {
        UInt128 held = 0;
        foreach (char c in text)
        {
            if (c >= 128)
            {
                return new LetterSet(UInt128.MaxValue);
            }

            held |= UInt128.One << (c | CaseBit);
        }

        return new LetterSet(held);
    }

    /// <summary>False when the text cannot hold this one, however its letters are written.</summary>
    public bool MayHold(ReadOnlySpan<char> part)
    {
        (ulong high, ulong low) = ((ulong)(_held >> 64), (ulong)_held);
        foreach (char c in part)
        {
            int place = c | CaseBit;
            if (c < 128 && (((place < 64 ? low : high) >> (place & 63)) & 1) == 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>False when the text can hold none of these words.</summary>
    /// <param name="words">Words, such as a name.</param>
    /// <param name="breaks">Characters between words.</param>
    /// <param name="shortest">Words of fewer characters do not count alone.</param>
    public bool MayHoldAny(ReadOnlySpan<char> words, ReadOnlySpan<char> breaks, int shortest)
    {
        while (!words.IsEmpty)
        {
            int end = words.IndexOfAny(breaks);
            ReadOnlySpan<char> word = end < 0 ? words : words[..end];
            if (word.Length >= shortest && MayHold(word))
            {
                return true;
            }

            words = end < 0 ? [] : words[(end + 1)..];
        }

        return false;
    }
}
