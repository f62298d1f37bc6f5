namespace PartsSignal.Pipeline.Words;

/// <summary>Cuts free text into plain lower-case words: apostrophes vanish (won't = wont), every other mark divides.</summary>
internal static class Tokenizer
{
    /// <summary>The words of a text.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="keepStars">True to keep <c>*</c> as part of a word (tables of words).</param>
    public static List<string> Split(ReadOnlySpan<char> text, bool keepStars = false)
    {
        var words = new List<string>(16);
        Span<char> word = stackalloc char[64];
        int n = 0;
        foreach (char c in text)
        {
            if (char.IsLetterOrDigit(c) || (keepStars && c == '*'))
            {
                if (n < word.Length)
                {
                    word[n++] = char.ToLowerInvariant(c);
                }
            }
            else if (c is not ('\'' or '\u2019' or '\u00b4' or '`') && n > 0)
            {
                words.Add(new string(word[..n]));
                n = 0;
            }
        }

        if (n > 0)
        {
            words.Add(new string(word[..n]));
        }

        return words;
    }
}
