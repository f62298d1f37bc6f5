using Parquet;
using Parquet.Schema;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Values of one column: one half is filled while the other is written.</summary>
internal abstract class StagedColumn(DataField field)
{
    /// <summary>Its Parquet field.</summary>
    public DataField Field { get; } = field;

    /// <summary>Makes the filled half the one to write.</summary>
    public abstract void Swap();

    /// <summary>Writes the swapped half.</summary>
    public abstract Task WriteAsync(ParquetRowGroupWriter group, int count, CancellationToken cancellation);
}

/// <summary>A column of text.</summary>
internal sealed class TextColumn(string name, int capacity) : StagedColumn(new DataField(name, typeof(string), true))
{
    private string?[] _filling = new string?[capacity];
    private string?[] _writing = new string?[capacity];

    /// <summary>Sets a value.</summary>
    public void Set(int row, string? value) => _filling[row] = value;

    public override void Swap() => (_filling, _writing) = (_writing, _filling);

    public override Task WriteAsync(ParquetRowGroupWriter group, int count, CancellationToken cancellation) =>
        group.WriteAsync(Field, new ArraySegment<string>(_writing!, 0, count));
}

/// <summary>A column of numbers, dates or flags.</summary>
internal sealed class ValueColumn<T>(DataField field, int capacity) : StagedColumn(field)
    where T : struct
{
    private T?[] _filling = new T?[capacity];
    private T?[] _writing = new T?[capacity];

    /// <summary>Sets a value.</summary>
    public void Set(int row, T? value) => _filling[row] = value;

    public override void Swap() => (_filling, _writing) = (_writing, _filling);

    public override Task WriteAsync(ParquetRowGroupWriter group, int count, CancellationToken cancellation) =>
        group.WriteAsync<T>(Field, _writing.AsMemory(0, count), cancellationToken: cancellation);
}
