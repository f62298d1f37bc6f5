using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Rows of a table that were read and wait to be cleaned; bounded in rows and in characters.</summary>
internal sealed class RowBatch
{
    private readonly List<Entry> _rows;
    private char[] _chars;
    private CellPlace[] _cells;
    private byte[] _raw;
    private int _charsUsed;
    private int _cellsUsed;
    private int _rawUsed;

    /// <summary>An empty batch.</summary>
    /// <param name="like">A batch of the same table, whose room tells what its rows need, or null for the first one.</param>
    public RowBatch(RowBatch? like)
    {
        _rows = new List<Entry>(like?._rows.Count ?? 0);
        _chars = new char[Math.Max(1 << 12, like is null ? 0 : like._charsUsed + (like._charsUsed / 8))];
        _cells = new CellPlace[Math.Max(1 << 10, like is null ? 0 : like._cellsUsed + (like._cellsUsed / 8))];
        _raw = new byte[Math.Max(1 << 12, like is null ? 0 : like._rawUsed + (like._rawUsed / 8))];
    }

    /// <summary>Number of rows.</summary>
    public int Count => _rows.Count;

    /// <summary>True when no further row should come in.</summary>
    public bool IsFull => RowGroup.IsFull(_rows.Count, _charsUsed);

    /// <summary>Forgets all rows.</summary>
    public void Clear()
    {
        _rows.Clear();
        (_charsUsed, _cellsUsed, _rawUsed) = (0, 0, 0);
    }

    /// <summary>Adds the reader's current row.</summary>
    public void Add(TableReader reader)
    {
        RowCells cells = reader.Row;
        ReadOnlySpan<byte> raw = reader.RawUtf8;
        _rows.Add(new Entry(reader.Line, _charsUsed, cells.Characters.Length, _cellsUsed, cells.Count, cells.Origin, _rawUsed, raw.Length, reader.Fault));
        Append(ref _chars, ref _charsUsed, cells.Characters);
        Append(ref _cells, ref _cellsUsed, cells.Places);
        Append(ref _raw, ref _rawUsed, raw);
    }

    /// <summary>Line of a row.</summary>
    public int Line(int row) => _rows[row].Line;

    /// <summary>Why the row could not be cut into cells, or null if it could.</summary>
    public RowFault? Fault(int row) => _rows[row].Fault;

    /// <summary>Text of a row in the file, or the start of it; empty: it was never text.</summary>
    public ReadOnlySpan<byte> Raw(int row) => _raw.AsSpan(_rows[row].RawStart, _rows[row].RawLength);

    /// <summary>Makes a row the current one, as long as this batch keeps its rows.</summary>
    public void Load(int row, RowCells into)
    {
        Entry entry = _rows[row];
        into.Show(_chars, entry.CharStart, entry.Chars, _cells, entry.CellStart, entry.Cells, entry.Origin);
    }

    private static void Append<T>(ref T[] to, ref int used, ReadOnlySpan<T> more)
    {
        if (used + more.Length > to.Length)
        {
            Array.Resize(ref to, Math.Max(to.Length * 2, used + more.Length));
        }

        more.CopyTo(to.AsSpan(used));
        used += more.Length;
    }

    private readonly record struct Entry(int Line, int CharStart, int Chars, int CellStart, int Cells, RowOrigin Origin, int RawStart, int RawLength, RowFault? Fault);
}

/// <summary>Size of a group of staged rows. It depends on the rows alone, so that files are the same however many threads stage them.</summary>
internal static class RowGroup
{
    /// <summary>Most rows of a group.</summary>
    public const int MostRows = 16_384;

    private const int MostCharacters = 1 << 22;

    /// <summary>True when a group of so many rows with so many characters takes no further one.</summary>
    public static bool IsFull(int rows, int characters) => rows >= MostRows || characters >= MostCharacters;
}
