using System.Buffers.Binary;
using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Places of the cells of a sheet that hold a failed formula, in a workbook of the older binary form ([MS-XLS]).</summary>
internal static class OldWorkbookErrors
{
    private const int Formula = 0x0006, EndOfPart = 0x000a, DateSystem = 0x0022, SheetName = 0x0085, ErrorCell = 0x0205, StartOfPart = 0x0809;
    private static readonly Dictionary<byte, string> Names = new()
    {
        [0x00] = "#NULL!",
        [0x07] = "#DIV/0!",
        [0x0f] = "#VALUE!",
        [0x17] = "#REF!",
        [0x1d] = "#NAME?",
        [0x24] = "#NUM!",
        [0x2a] = "#N/A",
    };

    /// <summary>Row and column (from 0) of every failed cell of a sheet, with the error it shows.</summary>
    /// <param name="workbook">All bytes of the workbook.</param>
    /// <param name="sheet">Name of the sheet.</param>
    /// <exception cref="InvalidDataException">The bytes are no compound file.</exception>
    public static IReadOnlyDictionary<(int Row, int Column), string> Find(byte[] workbook, string sheet)
    {
        var errors = new Dictionary<(int, int), string>();
        byte[]? stream = new CompoundFile(workbook).Find("Workbook", "Book");
        if (stream is null || StartOf(stream, sheet) is not { } at)
        {
            return errors;
        }

        int depth = 0;
        foreach ((int kind, ReadOnlyMemory<byte> body) in Records(stream, at))
        {
            // Charts stand within a sheet as parts of their own.
            depth += kind == StartOfPart ? 1 : kind == EndOfPart ? -1 : 0;
            if (depth == 0)
            {
                break;
            }

            if (ErrorOf(kind, body.Span) is { } error)
            {
                errors[(Word(body, 0), Word(body, 2))] = Names.GetValueOrDefault(error, "#ERROR");
            }
        }

        return errors;
    }

    /// <summary>True for a workbook whose days count from 1904.</summary>
    /// <param name="workbook">All bytes of the workbook.</param>
    public static bool CountsFrom1904(byte[] workbook) =>
        new CompoundFile(workbook).Find("Workbook", "Book") is { } stream
        && Records(stream, 0).TakeWhile(r => r.Kind != EndOfPart).Any(r => r.Kind == DateSystem && r.Body.Length >= 2 && Word(r.Body, 0) == 1);

    private static byte? ErrorOf(int kind, ReadOnlySpan<byte> body) => kind switch
    {
        Formula when body.Length >= 14 && body[12] == 0xff && body[13] == 0xff && body[6] == 2 => body[8],
        ErrorCell when body.Length >= 8 && body[7] == 1 => body[6],
        _ => null,
    };

    private static int? StartOf(byte[] stream, string sheet)
    {
        foreach ((int kind, ReadOnlyMemory<byte> body) in Records(stream, 0))
        {
            if (kind == EndOfPart)
            {
                break;
            }

            if (kind == SheetName && body.Length > 8 && NameOf(body.Span[6..]).Equals(sheet, StringComparison.OrdinalIgnoreCase))
            {
                return BinaryPrimitives.ReadInt32LittleEndian(body.Span);
            }
        }

        return null;
    }

    private static string NameOf(ReadOnlySpan<byte> text)
    {
        bool wide = (text[1] & 1) != 0;
        ReadOnlySpan<byte> bytes = text[2..];
        int length = Math.Min(text[0] * (wide ? 2 : 1), bytes.Length);
        return (wide ? Encoding.Unicode : Encoding.Latin1).GetString(bytes[..length]);
    }

    private static IEnumerable<(int Kind, ReadOnlyMemory<byte> Body)> Records(byte[] stream, int at)
    {
        while (at >= 0 && at + 4 <= stream.Length)
        {
            int length = BinaryPrimitives.ReadUInt16LittleEndian(stream.AsSpan(at + 2));
            yield return (BinaryPrimitives.ReadUInt16LittleEndian(stream.AsSpan(at)), stream.AsMemory(at + 4, Math.Min(length, stream.Length - at - 4)));
            at += 4 + length;
        }
    }

    private static int Word(ReadOnlyMemory<byte> body, int at) => BinaryPrimitives.ReadUInt16LittleEndian(body.Span[at..]);
}
