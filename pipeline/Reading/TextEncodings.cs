using System.Text;
using UtfUnknown;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Which encoding a text file is in.</summary>
internal static class TextEncodings
{
    private const float WantedConfidence = 0.9f;
    private const int FewLetters = 64;
    private static readonly string[] Guessable =
        ["windows-1250", "windows-1251", "windows-1253", "windows-1254", "windows-1257", "koi8-r", "shift_jis", "euc-jp", "euc-kr", "gb18030", "big5"];

    private static readonly string[] Paired = ["euc-jp", "euc-kr", "gb18030", "big5"];

    static TextEncodings() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    /// <summary>Names a map may use.</summary>
    public static bool IsKnown(string name) => Encoding.GetEncodings().Any(e => e.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
        || CodePagesEncodingProvider.Instance.GetEncoding(name) is not null;

    /// <summary>The encoding of that name.</summary>
    public static Encoding Parse(string name) => Encoding.GetEncoding(name);

    /// <summary>
    /// Decides from a scan: a byte order mark wins; then UTF-16 without a mark; then UTF-8 where all (or all but a
    /// hundredth) of the bytes above ASCII are UTF-8; then a guess from the letters, with Windows-1252 as the rule.
    /// </summary>
    public static Encoding Detect(ContentScan scan)
    {
        if (scan.Mark is { } marked)
        {
            return marked;
        }

        if (scan.InvalidUtf8 == 0 || scan.ValidUtf8 > 100L * scan.InvalidUtf8)
        {
            return Encoding.UTF8;
        }

        var shapes = RunShapes.Of(scan.Sample);
        if (shapes.Encoding is { } told)
        {
            return Encoding.GetEncoding(told);
        }

        if (shapes.AreSigns)
        {
            return Encoding.GetEncoding(1252);
        }

        if (HasPolishWords(scan.Sample))
        {
            return Encoding.GetEncoding(1250);
        }

        // A few letters above ASCII prove nothing; Windows-1252 is by far the commonest.
        DetectionDetail? guess = scan.InvalidUtf8 + scan.ValidUtf8 < FewLetters ? null : CharsetDetector.DetectFromBytes(scan.Sample).Detected;
        return guess is { Encoding: { } encoding } && guess.Confidence >= WantedConfidence
            && Guessable.Contains(guess.EncodingName, StringComparer.OrdinalIgnoreCase)
            && !(shapes.AreSingle && Paired.Contains(guess.EncodingName, StringComparer.OrdinalIgnoreCase))
            ? encoding
            : Encoding.GetEncoding(1252);
    }

    // A small raised 1 or 3 between two small letters is no word of Western Europe, cubic meters apart, nor is the ligature oe
    // before these consonants; in Windows-1250 they are letters of Polish.
    private static bool HasPolishWords(ReadOnlySpan<byte> text)
    {
        for (int i = 1; i + 1 < text.Length; i++)
        {
            byte before = text[i - 1], after = text[i + 1];
            if ((text[i] is 0xb3 or 0xb9 && before is >= (byte)'a' and <= (byte)'z' and not (byte)'m' && after is >= (byte)'a' and <= (byte)'z')
                || (text[i] == 0x9c && before is (>= (byte)'a' and <= (byte)'z') or >= 0xc0 && (after == 0xe6 || "cwlmkp"u8.Contains(after))))
            {
                return true;
            }
        }

        return false;
    }
}
