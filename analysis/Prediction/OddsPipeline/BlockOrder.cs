using System.Buffers.Binary;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>
/// Puts the blocks of a binary data view in order. The library compresses blocks on several threads and writes each as it
/// gets done, so the same rows make different bytes; the lookup tables at the end say where each block went.
/// </summary>
internal static class BlockOrder
{
    private const int HeaderLength = 256, TableOffsetAt = 24, RowCountAt = 40, ColumnCountAt = 48;
    private const int EntryLength = 16, LengthAt = 8;

    /// <summary>The same data view with its blocks by rows, then by column.</summary>
    /// <param name="file">A whole file in the library's binary format, version 1.1.1.6 or one with the same layout.</param>
    /// <exception cref="InvalidDataException">The blocks do not fill the space between the header and the lookup tables.</exception>
    public static byte[] Ordered(byte[] file)
    {
        byte[] ordered = [.. file];
        int next = HeaderLength;
        foreach (int entry in Entries(file))
        {
            int from = checked((int)BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(entry)));
            int length = BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(entry + LengthAt));
            file.AsSpan(from, length).CopyTo(ordered.AsSpan(next));
            BinaryPrimitives.WriteInt64LittleEndian(ordered.AsSpan(entry), next);
            next += length;
        }

        return next == FirstLookup(file) ? ordered : throw new InvalidDataException("The blocks of the model's table do not fill its space.");
    }

    // Where the lookup entry of each block stands, in the order the blocks should have.
    private static IEnumerable<int> Entries(byte[] file)
    {
        List<(int Lookup, int RowsPerBlock)> columns = Columns(file);
        long rows = BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(RowCountAt));
        return columns
            .SelectMany((c, at) => Enumerable.Range(0, (int)((rows + c.RowsPerBlock - 1) / c.RowsPerBlock)).Select(block => (Block: block, Column: at, Entry: c.Lookup + (block * EntryLength))))
            .OrderBy(e => e.Block).ThenBy(e => e.Column)
            .Select(e => e.Entry);
    }

    private static long FirstLookup(byte[] file) =>
        Columns(file) is { Count: > 0 } columns ? columns.Min(c => c.Lookup) : HeaderLength;

    private static List<(int Lookup, int RowsPerBlock)> Columns(byte[] file)
    {
        using var reader = new BinaryReader(new MemoryStream(file));
        reader.BaseStream.Position = BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(TableOffsetAt));
        var columns = new List<(int, int)>();
        for (int left = BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(ColumnCountAt)); left > 0; left--)
        {
            // A column's entry: its name, its codec (name and parameters), how it is compressed, rows per block, its lookup table, its notes.
            reader.ReadString();
            reader.ReadString();
            reader.BaseStream.Seek(reader.Read7BitEncodedInt(), SeekOrigin.Current);
            reader.ReadByte();
            int rowsPerBlock = reader.Read7BitEncodedInt();
            columns.Add((checked((int)reader.ReadInt64()), rowsPerBlock));
            reader.ReadInt64();
        }

        return columns;
    }
}
