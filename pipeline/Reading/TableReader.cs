namespace PartsSignal.Pipeline.Reading;

/// <summary>Rows of one table, one at a time, whatever file they come from.</summary>
public abstract class TableReader : IDisposable
{
    /// <summary>Cells of the current row; empty where <see cref="Fault"/> says the row could not be cut into cells.</summary>
    public RowCells Row { get; } = new();

    /// <summary>Line of the file (or row of the sheet) where the current row starts, from 1.</summary>
    public int Line { get; protected set; }

    /// <summary>Why the current row could not be cut into cells; null: it could.</summary>
    public RowFault? Fault { get; protected set; }

    /// <summary>Bytes read so far, for progress.</summary>
    public abstract long Position { get; }

    /// <summary>The current row as the file has it, for the rejects.</summary>
    public abstract string RawText { get; }

    /// <summary>Name of a cell's place for people, for example <c>column 3</c> or <c>Sheet1!C12</c>.</summary>
    public abstract string Place(int column);

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
