using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The data rows of a table, without blank rows.</summary>
/// <param name="table">The table.</param>
/// <param name="progress">Told now and then how many rows and bytes were read.</param>
internal sealed class DataRows(OpenedTable table, Action<long, long> progress)
{
    private const int ProgressRows = 10_000;
    private long _read;

    /// <summary>On the current row.</summary>
    public TableReader Reader => table.Reader;

    /// <summary>Moves to the next row.</summary>
    /// <returns>False at the end.</returns>
    public bool Next(CancellationToken cancellation)
    {
        while (table.Reader.Read())
        {
            if (table.Reader.Fault is null && table.Reader.Row.IsBlank)
            {
                continue;
            }

            if (++_read % ProgressRows == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress(_read, table.Reader.Position);
            }

            return true;
        }

        return false;
    }
}
