using Parquet;
using Parquet.Schema;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// A column of texts, written as they are: for those that hardly repeat themselves, and for short tables. Characters that are no string yet are copied into blocks that serve
/// group after group, so that a cell costs the collector nothing.
/// </summary>
internal sealed class TextColumn(string name, int capacity) : FilledColumn<ReadOnlyMemory<char>>(new DataField(name, typeof(string), true), capacity)
{
    private const int BlockChars = 1 << 15;
    private readonly List<char[]> _blocks = [];
    private int _block;
    private int _used;

    /// <summary>Sets a text, or null if none.</summary>
    public void Set(int row, string? value)
    {
        if (value is null)
        {
            Empty(row);
        }
        else
        {
            Fill(row, value.AsMemory());
        }
    }

    /// <summary>Sets a copy of a text; empty: none.</summary>
    public void Set(int row, ReadOnlySpan<char> value)
    {
        if (value.IsEmpty)
        {
            Empty(row);
            return;
        }

        Memory<char> copy = Room(value.Length);
        value.CopyTo(copy.Span);
        Fill(row, copy);
    }

    public override async Task WriteAsync(ParquetRowGroupWriter group, DataField field, int count, CancellationToken cancellation)
    {
        await base.WriteAsync(group, field, count, cancellation).ConfigureAwait(false);
        (_block, _used) = (0, 0);
    }

    private Memory<char> Room(int length)
    {
        if (length > BlockChars)
        {
            return new char[length];
        }

        if (_block < _blocks.Count && _used + length > BlockChars)
        {
            (_block, _used) = (_block + 1, 0);
        }

        if (_block == _blocks.Count)
        {
            _blocks.Add(new char[BlockChars]);
        }

        Memory<char> room = _blocks[_block].AsMemory(_used, length);
        _used += length;
        return room;
    }
}
