namespace PartsSignal.Pipeline.Words;

/// <summary>Cuts free text into plain lower-case words: apostrophes vanish (won't = wont), every other mark divides.</summary>
internal static class Tokenizer
{
    // Articles and pronouns that French and Italian write with the next word: l'eau is eau.
    private static readonly HashSet<string> Elided = ["c", "d", "j", "l", "m", "n", "s", "t", "qu", "un", "dell", "nell", "dall", "all", "sull"];

    /// <summary>The words of a text.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="keepStars">True to keep <c>*</c> as part of a word (tables of words).</param>
    public static List<string> Split(ReadOnlySpan<char> text, bool keepStars = false) => Split(text, keepStars, elisions: false);

    /// <summary>The words of a text without accents, and without articles that stand before an apostrophe.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="keepStars">True to keep <c>*</c> as part of a word (tables of words).</param>
    public static List<string> Folded(ReadOnlySpan<char> text, bool keepStars = false)
    {
        List<string> words = Split(text, keepStars, elisions: true);
        for (int i = 0; i < words.Count; i++)
        {
            if (!System.Text.Ascii.IsValid(words[i]))
            {
                words[i] = TextFold.Fold(words[i]);
            }
        }

        return words;
    }

    private static List<string> Split(ReadOnlySpan<char> text, bool keepStars, bool elisions)
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
            else if (c is '\'' or '\u2019' or '\u00b4' or '`')
            {
                n = elisions && Elided.Contains(new string(word[..n])) ? 0 : n;
            }
            else if (n > 0)
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
