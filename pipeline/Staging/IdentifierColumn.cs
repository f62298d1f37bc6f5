using Parquet;
using Parquet.Schema;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging;

/// <summary>A column of digests, written as identifiers: a group's are enciphered at once, which costs next to nothing a cell.</summary>
internal sealed class IdentifierColumn(string name, int capacity, IdentityKey key) : ValueColumn<UInt128>(new DataField(name, typeof(string), true), capacity)
{
    private char[] _characters = [];
    private ReadOnlyMemory<char>[] _identifiers = [];

    protected override Task WriteAsync(ParquetRowGroupWriter group, DataField field, Memory<UInt128> cells, ReadOnlyMemory<int> levels, CancellationToken cancellation)
    {
        if (_identifiers.Length < cells.Length)
        {
            _characters = new char[levels.Length * IdentityKey.IdentifierLength];
            _identifiers = [.. Enumerable.Range(0, levels.Length).Select(i => _characters.AsMemory(i * IdentityKey.IdentifierLength, IdentityKey.IdentifierLength))];
        }

        key.Identify(cells.Span, _characters);
        return group.WriteAllPartsAsync<ReadOnlyMemory<char>>(field, _identifiers.AsMemory(0, cells.Length), levels, null, cancellation);
    }
}
