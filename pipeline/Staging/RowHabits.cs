using System.Buffers;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// What the first rows of a file show: how many cells a row has, what each column holds, and how often the last ones are
/// blank. By it a row that only lacks blank cells at its end is told from one that lost a cell in its middle.
/// </summary>
internal sealed class RowHabits
{
    private const int LeastRows = 5;

    // One row in a hundred that is short has lost a cell elsewhere than at its end; and the other reading must be well
    // behind before a short row is loaded.
    private const double Broken = 0.01;
    private const double LeastRatio = 20;
    private const double LeastEnds = 0.001;

    private static readonly SearchValues<char> Marks = SearchValues.Create(".,-/$\u00a3\u20ac");

    private static readonly SearchValues<char> StrongMarks = SearchValues.Create(".,$\u00a3\u20ac");

    private readonly int _width;
    private readonly TextColumnPlace[] _texts;
    private readonly ColumnHabit[] _columns;

    // Rows of the sample that leave so many cells at their end blank, or away.
    private readonly int[] _blankEnds;
    private readonly int[] _shortEnds;
    private readonly int _rows;

    private RowHabits(int width, IReadOnlyList<string[]> rows, IReadOnlyList<TextColumnPlace> texts)
    {
        (_width, _texts) = (width, [.. texts]);
        _rows = rows.Count;
        Cells = UsualCells(width, rows);
        _columns = [.. Enumerable.Range(0, Cells).Select(_ => new ColumnHabit())];
        (_blankEnds, _shortEnds) = (new int[Cells + 1], new int[Cells + 1]);
        foreach (string[] row in rows)
        {
            int filled = Array.FindLastIndex(row, c => !string.IsNullOrWhiteSpace(c)) + 1;
            if (row.Length < Cells)
            {
                Count(_shortEnds, Cells - row.Length);
            }
            else if (filled <= width)
            {
                Count(_blankEnds, Cells - filled);
                for (int i = 0; i < Cells; i++)
                {
                    _columns[i].Learn(row[i]);
                }
            }
        }
    }

    /// <summary>Cells of a usual row: those of the header, and the empty ones that nearly all rows have behind them.</summary>
    public int Cells { get; }

    /// <summary>The habits that rows show; repeated headers and totals among them teach nothing.</summary>
    /// <param name="header">The header.</param>
    /// <param name="rows">The first rows.</param>
    /// <param name="texts">The columns of words and codes, to be watched for cells that have moved; empty: not watched.</param>
    public static RowHabits Of(IReadOnlyList<string> header, IReadOnlyList<string[]> rows, IReadOnlyList<TextColumnPlace> texts) => new(
        header.Count,
        [.. rows.Where(r => !FooterRule.IsTotalWord(Array.Find(r, c => !string.IsNullOrWhiteSpace(c))) && !r.Select(c => c.Trim()).SequenceEqual(header.Select(h => h.Trim())))],
        texts);

    /// <summary>Why the row's number of cells refuses it, or null if every cell stands where it belongs.</summary>
    public RowFault? Fault(RowCells row)
    {
        // In a sheet no cell moves another: what stands right of the header is a note that no field reads.
        if (row.IsOfText && row.Count > _width && (row.Count > Cells || row.FilledCount() > _width))
        {
            return new RowFault(null, ReasonCode.TooManyCells, $"The row has {row.Count} cells; the header has {_width}.", "Put text that contains the separator in quotation marks.");
        }

        if (row.Count >= Cells || !row.IsOfText)
        {
            return null;
        }

        return row.EndsFile
                ? new RowFault(null, ReasonCode.TooFewCells, $"The file ends in the middle of this row: it has {row.Count} cells; the header has {_width}.", "Export the file again, or add the missing cells.")
            : LacksOnlyItsEnd(row) ? null
            : new RowFault(null, ReasonCode.TooFewCells, $"The row has {row.Count} cells; the header has {_width}.", "Add the missing cells, empty ones too.");
    }

    /// <summary>
    /// Why cells that have moved refuse the row, or null if none has: an amount or a day stands under a column of words or
    /// codes that never holds one, and another cell is out of place as well. One odd cell alone may be what somebody typed.
    /// </summary>
    public RowFault? Moved(MappedRow row)
    {
        foreach (TextColumnPlace text in _texts)
        {
            // Neither a day nor an amount begins or ends with a letter.
            ReadOnlySpan<char> cell = row.Cells[text.Column];
            if (cell.IsEmpty || char.IsAsciiLetter(cell[0]) || char.IsAsciiLetter(cell[^1]) || !MayBeDayOrAmount(cell))
            {
                continue;
            }

            CellShape shape = CellShapes.Of(cell);
            if (shape is CellShape.Date or CellShape.Amount && _columns[text.Column].NeverHolds(shape) && AnotherMoved(row.Cells, text.Column))
            {
                string what = shape == CellShape.Date ? "a date" : "an amount";
                return new RowFault(text.Field, ReasonCode.WrongColumn, $"{text.Label} in {row.Place(text.Column)} is {what}, which the column does not hold in other rows. The cells of the row seem to have moved.", "Move the cells back into their columns. A row that is right as it is can be loaded as a corrected row.");
            }
        }

        return null;
    }

    /// <summary>True when the row leaves a cell blank that hardly a row leaves blank; null where too few rows were seen to say.</summary>
    public bool? LacksUsual(RowCells row)
    {
        bool known = false;
        for (int i = 0; i < _columns.Length; i++)
        {
            known |= _columns[i].Rows > 1;
            if (_columns[i].IsAlwaysFilled && row[i].IsWhiteSpace())
            {
                return true;
            }
        }

        return known ? false : null;
    }

    /// <summary>True when at least one row in five leaves the column blank.</summary>
    public bool IsOftenBlank(int column) => column >= 0 && column < _columns.Length && _columns[column].Rows >= LeastRows && _columns[column].Filled * 5 <= _columns[column].Rows * 4;

    /// <summary>True when most cells of the column have that shape.</summary>
    public bool IsMostly(int column, CellShape shape) => column < _columns.Length && _columns[column].IsMostly(shape);

    // A day has two hyphens or slashes if it has no dot, and an amount a decimal mark or a sign of money.
    private static bool MayBeDayOrAmount(ReadOnlySpan<char> cell)
    {
        int mark = cell.IndexOfAny(Marks);
        return mark >= 0 && (cell[mark..].ContainsAny(StrongMarks) || cell[(mark + 1)..].Contains(cell[mark]));
    }

    private bool AnotherMoved(RowCells row, int but)
    {
        for (int i = 0; i < _columns.Length; i++)
        {
            if (i == but)
            {
                continue;
            }

            CellShape shape = CellShapes.Of(row[i]);
            if (shape == CellShape.Blank ? _columns[i].IsAlwaysFilled
                : _columns[i].HoldsFigures ? shape is CellShape.Word or CellShape.Phrase or CellShape.Code
                : shape is CellShape.Date or CellShape.Amount && _columns[i].NeverHolds(shape))
            {
                return true;
            }
        }

        return false;
    }

    // Every way to set the row's cells into the columns in their order: those that leave out columns at the end only,
    // against the likeliest that leaves out one before.
    private bool LacksOnlyItsEnd(RowCells row)
    {
        int lacking = Cells - row.Count;
        if (row.Count == 0 || _columns[0].Rows < LeastRows || !MayEndWithout(lacking))
        {
            return false;
        }

        double gap = Math.Log(Broken / row.Count);
        var best = new double[lacking + 1];
        Array.Fill(best, double.NegativeInfinity);
        best[0] = 0;
        for (int i = 0; i < row.Count; i++)
        {
            double before = double.NegativeInfinity;
            for (int skipped = 0; skipped <= lacking; skipped++)
            {
                double stay = best[skipped];
                best[skipped] = Math.Max(stay, before + gap) + _columns[i + skipped].LogLikelihood(row[i]);
                before = Math.Max(before, stay);
            }
        }

        double rival = Enumerable.Range(1, lacking).Max(skipped => best[skipped] + LogEnds(lacking - skipped));
        return best[0] + LogEnds(lacking) >= rival + Math.Log(LeastRatio);
    }

    // A row that ends before a column which others never leave blank is not complete.
    private bool MayEndWithout(int lacking) => _blankEnds[lacking] > 0 || _shortEnds[lacking] >= Math.Max(3, _rows / 20);

    private double LogEnds(int lacking) => lacking == 0 ? 0 : Math.Log(Math.Max((double)Math.Max(_blankEnds[lacking], _shortEnds[lacking]) / _rows, LeastEnds));

    private static void Count(int[] ends, int lacking)
    {
        for (int i = 1; i <= lacking; i++)
        {
            ends[i]++;
        }
    }

    private static int UsualCells(int width, IReadOnlyList<string[]> rows)
    {
        int longest = rows.Count == 0 ? width : rows.CountBy(r => r.Length).MaxBy(c => (c.Value, c.Key)).Key;
        return longest > width && rows.Count(r => r.Length == longest && r.AsSpan(width).IndexOfAnyExcept("") < 0) * 10 >= rows.Count * 9 ? longest : width;
    }
}
