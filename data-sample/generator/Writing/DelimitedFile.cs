using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace PartsSignal.SampleShop.Writing;

/// <summary>A text file of rows, written as they come.</summary>
internal sealed class DelimitedFile : IDisposable
{
    private readonly StreamWriter _writer;
    private readonly char _separator;

    public DelimitedFile(string folder, string name, char separator, Encoding encoding)
    {
        _separator = separator;
        _writer = new StreamWriter(Path.Combine(folder, name), false, encoding, 1 << 16) { NewLine = "\r\n" };
    }

    public static Encoding Utf8 { get; } = new UTF8Encoding(false);

    public static Encoding Utf8WithMark { get; } = new UTF8Encoding(true);

    public static Encoding Utf16WithMark { get; } = new UnicodeEncoding(false, true);

    /// <summary>The same bytes as windows-1252 for every letter the shop uses.</summary>
    public static Encoding Windows { get; } = Encoding.Latin1;

    public void Row(params IEnumerable<string> cells)
    {
        bool first = true;
        foreach (string cell in cells)
        {
            if (!first)
            {
                _writer.Write(_separator);
            }

            first = false;
            Cell(cell);
        }

        _writer.WriteLine();
    }

    /// <summary>A line as it stands, such as a note above the header.</summary>
    public void Note(string line) => _writer.WriteLine(line);

    public void Dispose() => _writer.Dispose();

    private void Cell(string cell)
    {
        if (cell.AsSpan().IndexOfAny('"', '\n', '\r') < 0 && !cell.Contains(_separator, StringComparison.Ordinal))
        {
            _writer.Write(cell);
            return;
        }

        _writer.Write('"');
        _writer.Write(cell.Replace("\"", "\"\"", StringComparison.Ordinal));
        _writer.Write('"');
    }
}

/// <summary>A gzip file of comma-separated rows; nothing in it dates it. Compare it unpacked: another version of the runtime may pack the same text otherwise.</summary>
internal sealed class PackedFile : IDisposable
{
    private readonly StreamWriter _writer;

    public PackedFile(string path)
    {
        var gzip = new GZipStream(File.Create(path), CompressionLevel.Optimal);
        _writer = new StreamWriter(gzip, new UTF8Encoding(false), 1 << 16) { NewLine = "\n" };
    }

    public void Row(params ReadOnlySpan<string> cells)
    {
        for (int i = 0; i < cells.Length; i++)
        {
            if (i > 0)
            {
                _writer.Write(',');
            }

            _writer.Write(cells[i]);
        }

        _writer.WriteLine();
    }

    public void Dispose() => _writer.Dispose();
}

/// <summary>What a spreadsheet makes of a part number when it opens a text file and saves it again.</summary>
internal static class Spreadsheet
{
    private static readonly string[] Months = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    /// <summary>The cell as shown: 1E10 turns into 1.00E+10, MAR-01 into 01-Mar, 0077313 into 77313; other text stays.</summary>
    public static string Show(string number)
    {
        int e = number.IndexOf('E', StringComparison.Ordinal);
        if (e > 0 && number[..e].All(char.IsAsciiDigit) && e < number.Length - 1 && number[(e + 1)..].All(char.IsAsciiDigit))
        {
            return $"{number[..e]}.00E+{int.Parse(number.AsSpan(e + 1), CultureInfo.InvariantCulture).ToString("00", CultureInfo.InvariantCulture)}";
        }

        if (number.Length == 6 && number[3] == '-' && Array.IndexOf(Months, number[..3]) is var month and >= 0)
        {
            return $"{number[4..]}-{CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames[month]}";
        }

        return number.All(char.IsAsciiDigit) ? number.TrimStart('0') : number;
    }
}
