namespace PartsSignal.Pipeline.Reading;

/// <summary>Rows of one table, one at a time, whatever file they come from.</summary>
internal abstract class TableReader : IDisposable
{
    /// <summary>Cells of the current row; empty where <see cref="Fault"/> says the row could not be cut into cells.</summary>
    public RowCells Row { get; } = new();

    /// <summary>Line of the file (or row of the sheet) where the current row starts, from 1.</summary>
    public int Line { get; protected set; }

    /// <summary>Why the current row could not be cut into cells; null: it could.</summary>
    public RowFault? Fault { get; protected set; }

    /// <summary>Bytes read so far, for progress.</summary>
    public abstract long Position { get; }

    /// <summary>The current row as the file has it, or its start where it is very long; empty: the file is no text.</summary>
    public abstract ReadOnlySpan<byte> RawUtf8 { get; }

    /// <summary>Name of a cell's place for people, for example <c>column 3</c> or <c>cell Sheet1!C12</c>.</summary>
    /// <param name="column">Its column, from 0.</param>
    /// <param name="line">Its row's <see cref="Line"/>.</param>
    public abstract string Place(int column, int line);

    /// <summary>Moves to the next row.</summary>
    /// <returns>False at the end.</returns>
    public abstract bool Read();

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes what the reader opened.</summary>
    protected abstract void Dispose(bool disposing);
}
