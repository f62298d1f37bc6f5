namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// A field whose reading depends on nothing but its own cell. What was read without fault is remembered; a cell that
/// cannot be read is read anew each time, so that every row of them is refused or tallied.
/// </summary>
/// <param name="field">The field.</param>
/// <param name="read">Reads it from the current row.</param>
/// <param name="bits">How much is remembered: two to this power texts at most.</param>
internal sealed class CachedField<T>(MappedField field, Func<MappedRow, MappedField, T> read, int bits = 12)
{
    private readonly ParseCache<T> _memory = new(bits);
    private bool _knowsEmpty;
    private T _empty = default!;

    /// <summary>True when the file or the map gives this field.</summary>
    public bool IsMapped { get; } = field.IsMapped;

    /// <summary>What the current row says.</summary>
    public T Read(MappedRow row)
    {
        bool plain = row.TryPlain(field, out ReadOnlySpan<char> cell);
        if (row.Fault is not null || !plain)
        {
            return read(row, field);
        }

        if (cell.IsEmpty && _knowsEmpty)
        {
            return _empty;
        }

        return _memory.TryGet(cell, out T known) ? known : ReadAnew(row, cell);
    }

    private T ReadAnew(MappedRow row, ReadOnlySpan<char> cell)
    {
        long skipped = row.Unread.Cells;
        T value = read(row, field);
        if (row.Fault is not null || row.Unread.Cells != skipped)
        {
            return value;
        }

        if (cell.IsEmpty)
        {
            (_knowsEmpty, _empty) = (true, value);
        }
        else
        {
            _memory.Keep(cell, value);
        }

        return value;
    }
}
