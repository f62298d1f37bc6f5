using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>What differs from row to row.</summary>
/// <param name="Row">Number of the row.</param>
/// <param name="Appliance">Number of the row that brought the appliance and its owner first.</param>
/// <param name="Day">Days after the log's first.</param>
/// <param name="Van">Number of the van and its technician.</param>
internal readonly record struct RowStamp(long Row, long Appliance, int Day, int Van);

/// <summary>A row of the small log, cut into the bytes that stay and the cells that change.</summary>
internal sealed class RowStencil
{
    /// <summary>No row is longer.</summary>
    public const int MostBytes = 8_192;

    private enum Cell
    {
        Ref, Opened, Closed, Van, Phone, House, Serial, End,
    }

    private readonly (byte[] Before, Cell Cell)[] _pieces;
    private readonly int _took;
    private readonly int _serialDigits;

    private RowStencil((byte[] Before, Cell Cell)[] pieces, int took, int serialDigits) =>
        (_pieces, _took, _serialDigits) = (pieces, took, serialDigits);

    /// <summary>Cuts a row.</summary>
    public static RowStencil Of(string[] header, string[] row)
    {
        var pieces = new List<(byte[] Before, Cell Cell)>();
        var stays = new StringBuilder();
        string serial = row[Array.IndexOf(header, "Serial no")];
        int digits = Math.Min(5, serial.Reverse().TakeWhile(char.IsAsciiDigit).Count());
        for (int c = 0; c < row.Length; c++)
        {
            stays.Append(c == 0 ? "" : ",");
            switch (header[c].Trim('\uFEFF'))
            {
                case "Ref": stays.Append('N'); Change(Cell.Ref); break;
                case "Opened": Change(Cell.Opened); break;
                case "Finished" when row[c].Length > 0: Change(Cell.Closed); break;
                case "Last change": Change(Cell.Closed); break;
                case "Vehicle" when row[c].Length > 0: Change(Cell.Van); break;
                case "Tech" when row[c].Length > 0: stays.Append(row[c]).Append(' '); Change(Cell.Van); break;
                case "Client phone": stays.Append("07"); Change(Cell.Phone); break;
                case "Client address": stays.Append('"'); Change(Cell.House); stays.Append(' ').Append(row[c]).Append('"'); break;
                case "Serial no" when digits > 0: stays.Append(serial[..^digits]); Change(Cell.Serial); break;
                default: stays.Append(Quoted(row[c])); break;
            }
        }

        stays.Append('\n');
        Change(Cell.End);
        int took = Day(row[Array.IndexOf(header, "Finished")]) - Day(row[Array.IndexOf(header, "Opened")]);
        return new RowStencil([.. pieces], Math.Clamp(took, 0, DayTexts.Beyond), digits);

        void Change(Cell cell)
        {
            pieces.Add((Encoding.UTF8.GetBytes(stays.ToString()), cell));
            stays.Clear();
        }
    }

    /// <summary>Writes the row.</summary>
    /// <returns>Bytes written.</returns>
    public int Stamp(Span<byte> to, RowStamp stamp, DayTexts days)
    {
        int at = 0;
        foreach ((byte[] before, Cell cell) in _pieces)
        {
            before.CopyTo(to[at..]);
            at += before.Length;
            at += cell switch
            {
                Cell.Ref => Digits(to[at..], stamp.Row, 9),
                Cell.Opened => Text(to[at..], days[stamp.Day]),
                Cell.Closed => Text(to[at..], days[stamp.Day + _took]),
                Cell.Van => Number(to[at..], stamp.Van),
                Cell.Phone => Digits(to[at..], stamp.Appliance * 618_033_989L % 1_000_000_000L, 9),
                Cell.House => Number(to[at..], stamp.Appliance % 197),
                Cell.Serial => Digits(to[at..], stamp.Appliance, _serialDigits),
                _ => 0,
            };
        }

        return at;
    }

    private static int Text(Span<byte> to, ReadOnlySpan<byte> text)
    {
        text.CopyTo(to);
        return text.Length;
    }

    private static int Number(Span<byte> to, long number)
    {
        Utf8Formatter.TryFormat(number, to, out int written);
        return written;
    }

    // The last digits only: a serial keeps its form, and with it its date code.
    private static int Digits(Span<byte> to, long number, int count)
    {
        for (int k = count - 1; k >= 0; k--)
        {
            to[k] = (byte)('0' + (number % 10));
            number /= 10;
        }

        return count;
    }

    private static string Quoted(string cell) => cell.AsSpan().IndexOfAny(',', '"') < 0 ? cell : "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static int Day(string text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day.DayNumber : 0;
}
