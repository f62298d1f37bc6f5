using System.Globalization;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Draws the spellings of a word together: lower case, without diacritics, composed or not, full-width letters as plain
/// ones, without apostrophes and invisible characters. The framework's own normalization needs culture data that the
/// program does not carry.
/// </summary>
internal static class TextFold
{
    // Base letters of U+00C0 to U+024F and U+1E00 to U+1EFF; a dot: the character has none.
    private const string Latin =
        "aaaaaaaceeeeiiiidnooooo.ouuuuytsaaaaaaaceeeeiiiidnooooo.ouuuuytyaaaaaaccccccccddddeeeeeeeeeegggggggg"
        + "hhhhiiiiiiiiii..jjkkkllllllllllnnnnnn.nnoooooooorrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs........"
        + "........................oo.............uu............................aaiioouuuuuuuuuu.aaaa....ggkkoo"
        + "oo..j...gg..nnaa....aaaaeeeeiiiioooorrrruuuusstt..hh......aaeeooooooooyy............................";

    private const string LatinMore =
        "aabbbbbbccddddddddddeeeeeeeeeeffgghhhhhhhhhhiiiikkkkkkllllllllmmmmmmnnnnnnnnoooooooopppprrrrrrrrssss"
        + "ssssssttttttttuuuuuuuuuuvvvvwwwwwwwwwwxxxxyyzzzzzzhtwy....s.aaaaaaaaaaaaaaaaaaaaaaaaeeeeeeeeeeeeeeee"
        + "iiiioooooooooooooooooooooooouuuuuuuuuuuuuuyyyyyyyy......";

    /// <summary>True for letters, marks upon letters, and characters that nobody sees.</summary>
    public static bool IsWordPart(char c) => c < 128 ? char.IsAsciiLetter(c) : IsOtherWordPart(c);

    /// <summary>True for apostrophes, straight, curly or an accent standing alone.</summary>
    public static bool IsApostrophe(char c) => c is '\'' or '\u2019' or '\u2018' or '\u00b4' or '`' or '\u02bc';

    /// <summary>Value of a digit of any script, or -1.</summary>
    public static int Digit(char c)
    {
        if (c < 128)
        {
            return char.IsAsciiDigit(c) ? c - '0' : -1;
        }

        double value = char.IsNumber(c) ? CharUnicodeInfo.GetNumericValue(c) : -1;
        return value is >= 0 and <= 9 && value == Math.Floor(value) ? (int)value : -1;
    }

    /// <summary>Folds a text.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="into">Room for twice as many characters.</param>
    /// <returns>Characters written.</returns>
    public static int Fold(ReadOnlySpan<char> text, Span<char> into)
    {
        int n = 0;
        foreach (char c in text)
        {
            if (c < 128)
            {
                if (c is not ('\'' or '`'))
                {
                    into[n++] = char.IsAsciiLetterUpper(c) ? (char)(c | 0x20) : c;
                }
            }
            else if (!IsApostrophe(c) && !IsUnseen(c))
            {
                n += FoldOther(c, into[n..]);
            }
        }

        return n;
    }

    /// <summary>The folded text.</summary>
    public static string Fold(ReadOnlySpan<char> text)
    {
        Span<char> room = text.Length <= 128 ? stackalloc char[256] : new char[text.Length * 2];
        return room[..Fold(text, room)].ToString();
    }

    private static bool IsOtherWordPart(char c) => char.IsLetter(c) || char.IsSurrogate(c) || IsUnseen(c);

    private static int FoldOther(char c, Span<char> into)
    {
        int digit = Digit(c);
        into[0] = digit >= 0 ? (char)('0' + digit)
            : c is '\u0132' or '\u0133' ? 'i'
            : c is >= '\uff21' and <= '\uff5a' ? char.ToLowerInvariant((char)(c - 0xfee0))
            : Base(c);
        char second = c switch
        {
            '\u00df' or '\u1e9e' => 's',
            '\u00c6' or '\u00e6' or '\u0152' or '\u0153' => 'e',
            '\u00de' or '\u00fe' => 'h',
            '\u0132' or '\u0133' => 'j',
            _ => '\0',
        };
        if (second == '\0')
        {
            return 1;
        }

        into[1] = second;
        return 2;
    }

    private static char Base(char c)
    {
        char known = c is >= '\u00c0' and <= '\u024f' ? Latin[c - 0xc0] : c is >= '\u1e00' and <= '\u1eff' ? LatinMore[c - 0x1e00] : '.';
        return known == '.' ? char.ToLowerInvariant(c) : known;
    }

    private static bool IsUnseen(char c) => char.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format;
}
