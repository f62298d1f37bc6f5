using Parquet;
using Parquet.Schema;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Cells of one column of the group of rows that is being filled.</summary>
/// <param name="field">Its Parquet field.</param>
/// <param name="repeats">True where few texts stand in many rows: written as a dictionary and places in it.</param>
internal abstract class StagedColumn(DataField field, bool repeats = false)
{
    /// <summary>Its Parquet field.</summary>
    public DataField Field { get; } = field;

    /// <summary>True where few texts stand in many rows.</summary>
    public bool Repeats { get; } = repeats;

    /// <summary>Makes room for so many rows.</summary>
    public abstract void Grow(int rows);

    /// <summary>Writes the first rows as the column's part of a group, and forgets them.</summary>
    /// <param name="group">The group.</param>
    /// <param name="field">The column in the file's schema.</param>
    /// <param name="count">How many rows.</param>
    /// <param name="cancellation">Stops.</param>
    public abstract Task WriteAsync(ParquetRowGroupWriter group, DataField field, int count, CancellationToken cancellation);
}

/// <summary>A column whose cells are kept as <typeparamref name="T"/> and, apart from them, as Parquet has it, which rows have any.</summary>
internal abstract class FilledColumn<T>(DataField field, int capacity) : StagedColumn(field)
    where T : struct
{
    private int[] _levels = new int[capacity];
    private T[] _cells = new T[capacity];

    public override void Grow(int rows)
    {
        Array.Resize(ref _levels, rows);
        Array.Resize(ref _cells, rows);
    }

    public override Task WriteAsync(ParquetRowGroupWriter group, DataField field, int count, CancellationToken cancellation)
    {
        int filled = _levels.AsSpan(0, count).IndexOf(0);
        filled = filled < 0 ? count : filled;
        for (int i = filled; i < count; i++)
        {
            if (_levels[i] > 0)
            {
                _cells[filled++] = _cells[i];
            }
        }

        return WriteAsync(group, field, _cells.AsMemory(0, filled), _levels.AsMemory(0, count), cancellation);
    }

    /// <summary>Writes the cells that there are.</summary>
    /// <param name="group">The group.</param>
    /// <param name="field">The column in the file's schema.</param>
    /// <param name="cells">The cells; free for any use.</param>
    /// <param name="levels">1 for a row that has one, else 0.</param>
    /// <param name="cancellation">Stops.</param>
    protected virtual Task WriteAsync(ParquetRowGroupWriter group, DataField field, Memory<T> cells, ReadOnlyMemory<int> levels, CancellationToken cancellation) =>
        group.WriteAllPartsAsync<T>(field, cells, levels, null, cancellation);

    /// <summary>Sets a cell.</summary>
    protected void Fill(int row, T value)
    {
        _levels[row] = 1;
        _cells[row] = value;
    }

    /// <summary>Leaves a cell empty.</summary>
    protected void Empty(int row) => _levels[row] = 0;
}

/// <summary>A column of numbers, flags, days or times.</summary>
internal class ValueColumn<T>(DataField field, int capacity) : FilledColumn<T>(field, capacity)
    where T : struct
{
    /// <summary>Sets a value, or null if none.</summary>
    public void Set(int row, T? value)
    {
        if (value is { } given)
        {
            Fill(row, given);
        }
        else
        {
            Empty(row);
        }
    }
}

/// <summary>A column of a few words that many rows share.</summary>
/// <param name="name">Its name.</param>
/// <param name="capacity">Rows there is room for.</param>
/// <param name="scratch">Room to write from, shared with the columns that are written before and after.</param>
internal sealed class WordColumn(string name, int capacity, WordScratch scratch) : StagedColumn(new DataField(name, typeof(string), true), repeats: true)
{
    private Cell[] _cells = new Cell[capacity];

    /// <summary>Sets a word, or null if none.</summary>
    public void Set(int row, string? word) => _cells[row] = new Cell(word);

    public override void Grow(int rows) => Array.Resize(ref _cells, rows);

    public override Task WriteAsync(ParquetRowGroupWriter group, DataField field, int count, CancellationToken cancellation)
    {
        (int[] levels, ReadOnlyMemory<char>[] filled) = scratch.For(count);
        int next = 0;
        for (int i = 0; i < count; i++)
        {
            string? word = _cells[i].Word;
            levels[i] = word is null ? 0 : 1;
            if (word is not null)
            {
                filled[next++] = word.AsMemory();
            }
        }

        return group.WriteAllPartsAsync<ReadOnlyMemory<char>>(field, filled.AsMemory(0, next), levels.AsMemory(0, count), null, cancellation);
    }

    // An array of strings would be asked at every word whether it takes strings.
    private readonly record struct Cell(string? Word);
}

/// <summary>Room from which one column of words after the other is written.</summary>
internal sealed class WordScratch
{
    private int[] _levels = [];
    private ReadOnlyMemory<char>[] _filled = [];

    /// <summary>Room for so many rows: which of them have a word, and the words.</summary>
    public (int[] Levels, ReadOnlyMemory<char>[] Filled) For(int rows)
    {
        if (_levels.Length < rows)
        {
            (_levels, _filled) = (new int[rows], new ReadOnlyMemory<char>[rows]);
        }

        return (_levels, _filled);
    }
}

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
