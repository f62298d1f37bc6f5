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
