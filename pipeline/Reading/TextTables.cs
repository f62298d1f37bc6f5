using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Opens text tables.</summary>
internal static class TextTables
{
    private const int StartBytes = 1 << 18;
    private const int LookedAtBytes = 1 << 12;

    /// <summary>The text of a file as UTF-8, without its byte order mark.</summary>
    public static Stream OpenUtf8(InputFile file, ContentScan scan, Encoding encoding, ReadingLimits limits)
    {
        Stream bytes = new ScannedStream(file.Open(limits), file.Name, scan);
        Span<byte> mark = stackalloc byte[scan.MarkBytes];
        bytes.ReadAtLeast(mark, scan.MarkBytes, throwOnEndOfStream: false);
        return encoding is UTF8Encoding ? bytes : Encoding.CreateTranscodingStream(bytes, encoding, new UTF8Encoding(false));
    }

    /// <summary>The first lines of a file as UTF-8.</summary>
    public static byte[] Start(InputFile file, ContentScan scan, Encoding encoding, ReadingLimits limits)
    {
        using Stream text = OpenUtf8(file, scan, encoding, limits);
        var start = new byte[StartBytes];
        int n = text.ReadAtLeast(start, StartBytes, throwOnEndOfStream: false);
        if (n < StartBytes)
        {
            return start[..n];
        }

        int end = start.AsSpan().LastIndexOf((byte)'\n');
        return end < 0 ? start : start[..(end + 1)];
    }

    /// <summary>
    /// False for a picture, a document or a workbook under a text file's name. Those begin with a known mark, or hold control
    /// characters at random, about one byte in nine; text has next to none.
    /// </summary>
    public static bool LooksLikeText(InputFile file, ReadingLimits limits)
    {
        Span<byte> start = stackalloc byte[LookedAtBytes];
        using Stream bytes = file.Open(limits);
        ReadOnlySpan<byte> looked = start[..bytes.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)];
        int controls = 0;
        foreach (byte b in looked)
        {
            // Zeros, tabs, line and page ends, the old end-of-file mark and escapes occur in exports.
            controls += b < ' ' && !"\0\t\n\v\f\r\u001a\u001b"u8.Contains(b) ? 1 : 0;
        }

        return !looked.StartsWith("PK\u0003\u0004"u8) && !looked.StartsWith("%PDF-"u8) && !looked.StartsWith(CompoundMark) && controls * 25 <= looked.Length;
    }

    /// <summary>How every compound file begins ([MS-CFB], section 2.2): the older workbooks, and those with a password.</summary>
    public static ReadOnlySpan<byte> CompoundMark => [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

    // Every byte is a character in the encodings of one byte; in the others some sequences are none.
    private static bool IsBroken(Encoding encoding, ContentScan scan) => encoding is UTF8Encoding ? scan.InvalidUtf8 > 0 : !encoding.IsSingleByte;

    /// <summary>Opens the rows of a text file from its header on.</summary>
    public static CsvTable Open(InputFile file, ContentScan scan, TextForm form, ReadingLimits limits) =>
        new(OpenUtf8(file, scan, form.Encoding, limits), form.Separator, Math.Max(1, form.HeaderLine), IsBroken(form.Encoding, scan), limits);
}
