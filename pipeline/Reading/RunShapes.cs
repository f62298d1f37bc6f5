namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// Tells Windows-1251 and GB18030 from Windows-1252 by the runs of bytes above ASCII. West European words hold single
/// accented letters; Cyrillic words are such bytes throughout, of any number; Chinese characters are pairs of them.
/// </summary>
/// <param name="Bytes">Bytes above ASCII.</param>
/// <param name="InWords">Those in runs of three or more.</param>
/// <param name="Pairs">Those that are pairs of the common Chinese characters (GB 2312).</param>
/// <param name="Odd">Runs of an odd number of bytes.</param>
/// <param name="Runs">Runs.</param>
/// <param name="Small">Bytes that are small Cyrillic letters in Windows-1251.</param>
/// <param name="Capital">Bytes that are capital Cyrillic letters in it.</param>
/// <param name="Signs">Single bytes beside no letter: the sign of a currency, of degrees, a dash.</param>
internal sealed record RunShapes(int Bytes, int InWords, int Pairs, int Odd, int Runs, int Small, int Capital, int Signs)
{
    private const int FewestBytes = 24;

    /// <summary>True where nearly all bytes above ASCII are signs: these are the same in all Western encodings.</summary>
    public bool AreSigns => Runs > 0 && Signs * 10 >= Runs * 9;

    /// <summary>True where many characters are single bytes, so that the text is not made of byte pairs.</summary>
    public bool AreSingle => Odd * 5 > Runs;

    /// <summary>Name of the encoding, where the runs leave no doubt; null: they do not tell.</summary>
    public string? Encoding
    {
        get
        {
            bool inWords = Bytes >= FewestBytes && InWords * 2 > Bytes;
            return Bytes >= FewestBytes && Odd * 20 <= Runs && Pairs * 20 >= Bytes * 19 ? "gb18030"
                : inWords && Odd * 5 >= Runs && Small >= Capital && (Small + Capital) * 20 >= Bytes * 19 ? "windows-1251"
                : null;
        }
    }

    /// <summary>The shapes of a sample of text.</summary>
    public static RunShapes Of(ReadOnlySpan<byte> text)
    {
        int bytes = 0, inWords = 0, pairs = 0, odd = 0, runs = 0, small = 0, capital = 0, signs = 0;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] < 0x80)
            {
                continue;
            }

            int start = i;
            while (i < text.Length && text[i] >= 0x80)
            {
                // The letter io, small and capital, stands apart from the other letters.
                small += text[i] is >= 0xe0 or 0xb8 ? 1 : 0;
                capital += text[i] is (>= 0xc0 and < 0xe0) or 0xa8 ? 1 : 0;
                i++;
            }

            int length = i - start;
            runs++;
            bytes += length;
            inWords += length >= 3 ? length : 0;
            odd += length % 2;
            signs += length == 1 && (start == 0 || !char.IsAsciiLetter((char)text[start - 1])) && (i == text.Length || !char.IsAsciiLetter((char)text[i])) ? 1 : 0;
            for (int p = start; p + 1 < i; p += 2)
            {
                // Punctuation of row A1 and A3, characters of rows B0 to F7.
                pairs += text[p] is 0xa1 or 0xa3 or (>= 0xb0 and <= 0xf7) && text[p + 1] is >= 0xa1 and <= 0xfe ? 2 : 0;
            }
        }

        return new RunShapes(bytes, inWords, pairs, odd, runs, small, capital, signs);
    }
}
