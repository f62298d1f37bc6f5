namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// Which columns have held only figures (numbers, days, times) in the first rows: tells a line of a long text from a
/// row of the table where both have as many separators.
/// </summary>
internal sealed class RowShape
{
    private const int LearnedRows = 200;
    private const int LeastRows = 2;
    private readonly List<(int Filled, int Figures)> _columns = [];
    private int _rows;

    /// <summary>True while rows still teach something.</summary>
    public bool Learning => _rows < LearnedRows;

    /// <summary>Learns from a row that is beyond doubt.</summary>
    public void Learn(RowCells row)
    {
        _rows++;
        for (int i = 0; i < row.Count; i++)
        {
            if (i == _columns.Count)
            {
                _columns.Add(default);
            }

            ReadOnlySpan<char> cell = row[i].Trim();
            if (!cell.IsEmpty)
            {
                _columns[i] = (_columns[i].Filled + 1, _columns[i].Figures + (IsFigure(cell) ? 1 : 0));
            }
        }
    }

    /// <summary>
    /// True when every column of figures holds a figure or nothing in this line, false when one does not, null when no
    /// column of figures is known.
    /// </summary>
    /// <param name="line">A line of the file, cut at every separator: quotation marks protect nothing here.</param>
    /// <param name="separator">The separator.</param>
    public bool? Fits(ReadOnlySpan<char> line, char separator)
    {
        bool? fits = null;
        int i = 0;
        foreach (Range range in line.Split(separator))
        {
            if (i < _columns.Count && _columns[i] is { Filled: >= LeastRows } column && column.Filled == column.Figures)
            {
                ReadOnlySpan<char> cell = line[range].Trim(" \"\r\n\t");
                if (!cell.IsEmpty && !IsFigure(cell))
                {
                    return false;
                }

                fits = true;
            }

            i++;
        }

        return fits;
    }

    private static bool IsFigure(ReadOnlySpan<char> cell) =>
        cell.ContainsAnyInRange('0', '9') && !cell.ContainsAnyExcept("0123456789.,:/-+()$ %");
}
