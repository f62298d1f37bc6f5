using System.Buffers.Binary;
using System.Text;

namespace PartsSignal.Pipeline.Tests.Reading;

/// <summary>
/// Writes a workbook in the older binary form (BIFF8 in a compound file, as in [MS-XLS] and [MS-CFB]) record by record:
/// just enough for cells of text, numbers, dates, formulas and errors.
/// </summary>
internal sealed class XlsMaker
{
    private const int SectorBytes = 512;
    private readonly bool _dates1904;
    private readonly List<(string Name, MemoryStream Records)> _sheets = [];

    public XlsMaker(bool dates1904 = false) => _dates1904 = dates1904;

    private MemoryStream Sheet => _sheets[^1].Records;

    public XlsMaker AddSheet(string name)
    {
        _sheets.Add((name, new MemoryStream()));
        Record(Sheet, 0x809, Words(0x600, 0x10, 0, 0, 0, 0, 0, 0));
        Record(Sheet, 0x200, Words(0, 0, 1_000, 0, 0, 20, 0));
        return this;
    }

    public XlsMaker Text(int row, int column, string text) =>
        Cell(0x204, row, column, 0, [.. Words(text.Length), 1, .. Encoding.Unicode.GetBytes(text)]);

    public XlsMaker Number(int row, int column, double number, bool date = false) => Cell(0x203, row, column, date ? 1 : 0, BitConverter.GetBytes(number));

    public XlsMaker Formula(int row, int column, double value) => Cell(0x6, row, column, 0, [.. BitConverter.GetBytes(value), 0, 0, 0, 0, 0, 0, 3, 0, 0x1e, 1, 0]);

    /// <summary>A formula that failed, with the code of its error (0x07: division by zero).</summary>
    public XlsMaker FailedFormula(int row, int column, byte error) => Cell(0x6, row, column, 0, [2, 0, error, 0, 0, 0, 0xff, 0xff, 0, 0, 0, 0, 0, 0, 3, 0, 0x1e, 1, 0]);

    public XlsMaker Error(int row, int column, byte error) => Cell(0x205, row, column, 0, [error, 1]);

    public XlsMaker Merge(int row, int fromColumn, int toColumn)
    {
        Record(Sheet, 0xe5, Words(1, row, row, fromColumn, toColumn));
        return this;
    }

    public byte[] Make()
    {
        foreach ((_, MemoryStream records) in _sheets)
        {
            Record(records, 0xa, []);
        }

        var globals = new MemoryStream();
        Record(globals, 0x809, Words(0x600, 5, 0, 0, 0, 0, 0, 0));
        Record(globals, 0x42, Words(1200));
        Record(globals, 0x22, Words(_dates1904 ? 1 : 0));
        Record(globals, 0xe0, Words(0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
        Record(globals, 0xe0, Words(0, 14, 0, 0, 0, 0, 0, 0, 0, 0));
        int start = (int)globals.Length + _sheets.Sum(s => 4 + 8 + (2 * s.Name.Length)) + 4;
        foreach ((string name, MemoryStream records) in _sheets)
        {
            Record(globals, 0x85, [.. BitConverter.GetBytes(start), 0, 0, (byte)name.Length, 1, .. Encoding.Unicode.GetBytes(name)]);
            start += (int)records.Length;
        }

        Record(globals, 0xa, []);
        return Compound([.. globals.ToArray(), .. _sheets.SelectMany(s => s.Records.ToArray())]);
    }

    private XlsMaker Cell(int kind, int row, int column, int style, byte[] rest)
    {
        Record(Sheet, kind, [.. Words(row, column, style), .. rest]);
        return this;
    }

    private static void Record(MemoryStream into, int kind, byte[] body)
    {
        into.Write(Words(kind, body.Length));
        into.Write(body);
    }

    private static byte[] Words(params int[] words) => [.. words.SelectMany(w => BitConverter.GetBytes((ushort)w))];

    // Header, one sector that chains the others, one of the directory, then the stream.
    private static byte[] Compound(byte[] stream)
    {
        int sectors = (Math.Max(stream.Length, 4_096) + SectorBytes - 1) / SectorBytes;
        var file = new byte[SectorBytes * (3 + sectors)];
        byte[] mark = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
        mark.CopyTo(file, 0);
        foreach ((int at, ushort value) in new (int, ushort)[] { (24, 0x3e), (26, 3), (28, 0xfffe), (30, 9), (32, 6) })
        {
            BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(at), value);
        }

        foreach ((int at, uint value) in new (int, uint)[] { (44, 1), (48, 1), (56, 4_096), (60, 0xfffffffe), (68, 0xfffffffe) })
        {
            BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(at), value);
        }

        file.AsSpan(80, 432).Fill(0xff);
        file.AsSpan(SectorBytes, SectorBytes).Fill(0xff);
        uint[] chain = [0xfffffffd, 0xfffffffe, .. Enumerable.Range(3, sectors - 1).Select(s => (uint)s), 0xfffffffe];
        for (int i = 0; i < chain.Length; i++)
        {
            BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(SectorBytes + (4 * i)), chain[i]);
        }

        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(76), 0);
        Entry(file.AsSpan(2 * SectorBytes), "Root Entry", 5, 1, 0xfffffffe, 0);
        Entry(file.AsSpan((2 * SectorBytes) + 128), "Workbook", 2, 0xffffffff, 2, Math.Max(stream.Length, 4_096));
        stream.CopyTo(file, 3 * SectorBytes);
        return file;
    }

    private static void Entry(Span<byte> entry, string name, byte kind, uint child, uint start, int bytes)
    {
        Encoding.Unicode.GetBytes(name, entry);
        entry[64] = (byte)(2 * (name.Length + 1));
        (entry[66], entry[67]) = (kind, 1);
        entry[68..80].Fill(0xff);
        BinaryPrimitives.WriteUInt32LittleEndian(entry[76..], child);
        BinaryPrimitives.WriteUInt32LittleEndian(entry[116..], start);
        BinaryPrimitives.WriteInt32LittleEndian(entry[120..], bytes);
    }
}
