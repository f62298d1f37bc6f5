using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The first rows of a table, kept to learn its habits from.</summary>
internal sealed class RowSample
{
    private const int MostRows = 1_000;
    private const int MostCells = 200_000;
    private readonly List<string[]> _rows = [];
    private int _cells;

    /// <summary>The rows that could be cut into cells and are not blank.</summary>
    public IReadOnlyList<string[]> Rows => _rows;

    /// <summary>True when no more rows are taken.</summary>
    public bool IsFull => _rows.Count >= MostRows || _cells >= MostCells;

    /// <summary>Takes the current row of a table.</summary>
    public void Take(TableReader table)
    {
        if (!IsFull && table.Fault is null && !table.Row.IsBlank)
        {
            _rows.Add(table.Row.Texts());
            _cells += table.Row.Count;
        }
    }

    /// <summary>Takes the rows of a table from its current place.</summary>
    /// <param name="table">The table.</param>
    /// <param name="census">Takes them too.</param>
    public void TakeAll(TableReader table, WordCensus census)
    {
        while (!(IsFull && census.IsFull) && table.Read())
        {
            Take(table);
            census.Take(table);
        }
    }
}
