using Parquet;
using Parquet.Schema;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Values of one column of the group of rows that is being filled.</summary>
internal abstract class StagedColumn(DataField field)
{
    /// <summary>Its Parquet field.</summary>
    public DataField Field { get; } = field;

    /// <summary>Makes room for so many rows.</summary>
    public abstract void Grow(int rows);

    /// <summary>Writes the first rows as the column's part of a group, and forgets them.</summary>
    /// <param name="group">The group.</param>
    /// <param name="field">The column in the file's schema.</param>
    /// <param name="count">How many rows.</param>
    /// <param name="cancellation">Stops.</param>
    public abstract Task WriteAsync(ParquetRowGroupWriter group, DataField field, int count, CancellationToken cancellation);
}

/// <summary>A column of numbers, dates or flags.</summary>
internal sealed class ValueColumn<T>(DataField made, int capacity) : StagedColumn(made)
    where T : struct
{
    private T?[] _cells = new T?[capacity];

    /// <summary>Sets a value.</summary>
    public void Set(int row, T? value) => _cells[row] = value;

    public override void Grow(int rows) => Array.Resize(ref _cells, rows);

    public override Task WriteAsync(ParquetRowGroupWriter group, DataField field, int count, CancellationToken cancellation) =>
        group.WriteAsync<T>(field, _cells.AsMemory(0, count), cancellationToken: cancellation);
}
