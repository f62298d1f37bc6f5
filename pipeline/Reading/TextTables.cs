using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Opens text tables.</summary>
internal static class TextTables
{
    private const int StartBytes = 1 << 18;

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

    // Every byte is a character in the encodings of one byte; in the others some sequences are none.
    private static bool IsBroken(Encoding encoding, ContentScan scan) => encoding is UTF8Encoding ? scan.InvalidUtf8 > 0 : !encoding.IsSingleByte;

    /// <summary>Opens the rows of a text file from its header on.</summary>
    public static CsvTable Open(InputFile file, ContentScan scan, TextForm form, ReadingLimits limits) =>
        new(OpenUtf8(file, scan, form.Encoding, limits), form.Separator, Math.Max(1, form.HeaderLine), IsBroken(form.Encoding, scan), limits);
}
