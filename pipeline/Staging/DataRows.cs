using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The data rows of a table, without blank rows.</summary>
/// <param name="table">The table.</param>
/// <param name="progress">Told now and then how many rows and bytes were read.</param>
/// <param name="style">What holds for the file; null: each row stands as it is.</param>
internal sealed class DataRows(OpenedTable table, Action<long, long> progress, FileStyle? style = null)
{
    private const int ProgressRows = 10_000;

    // A row with less is a heading or a sum between the days.
    private const int FewestCells = 2;
    private readonly int _carried = style?.CarriedDay ?? -1;
    private long _read;
    private (string Text, CellForm Form)? _day;

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

            if (_carried >= 0)
            {
                CarryDay(table.Reader.Row);
            }

            return true;
        }

        return false;
    }

    private void CarryDay(RowCells row)
    {
        ReadOnlySpan<char> cell = row[_carried];
        if (!cell.IsWhiteSpace())
        {
            _day = DateText.TryDay(cell, style!.Dates, out _) ? (cell.ToString(), row.Form(_carried)) : _day;
        }
        else if (_day is { } day && _carried < row.Count && Enumerable.Range(0, row.Count).Count(i => !row[i].IsWhiteSpace()) >= FewestCells)
        {
            row.Fill(_carried, day.Text, day.Form);
        }
    }
}
