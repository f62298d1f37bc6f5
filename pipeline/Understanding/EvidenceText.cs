using System.Globalization;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Evidence as lines of text: levels as hex digits, headers as numbers, so that nothing of the files themselves is in it.</summary>
internal static class EvidenceText
{
    /// <summary>The lines of one column.</summary>
    public static string Line(ColumnEvidence column, Func<string, int> headerNumber) => string.Join(' ',
        headerNumber(column.Header).ToString(CultureInfo.InvariantCulture),
        column.IsFilled ? "1" : "0",
        Hex(column.Levels),
        Hex(column.HeaderLevels),
        Hex(column.Fits),
        column.Links.Count == 0 ? "-" : string.Join(';', column.Links.Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.Table}.{l.Column}.{l.Percent}.{(l.IsKey ? 1 : 0)}"))),
        column.Determines.Any(d => d > 0) ? Hex(column.Determines) : column.Determines.Length.ToString(CultureInfo.InvariantCulture) + ".");

    /// <summary>Reads what <see cref="Line"/> wrote.</summary>
    public static ColumnEvidence Read(ReadOnlySpan<string> words) => new(
        words[0],
        words[1] == "1",
        Levels(words[2]),
        Levels(words[3]),
        Levels(words[4]),
        words[5] == "-" ? [] : [.. words[5].Split(';').Select(l => l.Split('.')).Select(l => new ColumnLink(Whole(l[0]), Whole(l[1]), (byte)Whole(l[2]), l[3] == "1"))],
        words[6][^1] == '.' ? new byte[Whole(words[6][..^1])] : Levels(words[6]));

    /// <summary>Levels as hex digits.</summary>
    public static string Hex(byte[] levels) => string.Create(levels.Length, levels, (text, from) =>
    {
        for (int i = 0; i < from.Length; i++)
        {
            text[i] = "0123456789abcdef"[from[i]];
        }
    });

    /// <summary>Hex digits as levels.</summary>
    public static byte[] Levels(string hex) => [.. hex.Select(c => (byte)(char.IsAsciiDigit(c) ? c - '0' : c - 'a' + 10))];

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
