namespace PartsSignal.Pipeline.Staging;

/// <summary>What one column usually holds, by the first rows of its file.</summary>
internal sealed class ColumnHabit
{
    // How likely one text is among all of its shape that the column has not shown yet.
    private const double OneNewText = 0.01;

    private const int LeastFilled = 20;

    private readonly int[] _shapes = new int[CellShapes.Count];
    private readonly Dictionary<string, int> _texts = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> _byText;
    private int _once;

    /// <summary>A column of which nothing is known.</summary>
    public ColumnHabit() => _byText = _texts.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Rows it was seen in.</summary>
    public int Rows { get; private set; }

    /// <summary>Rows in which it was filled.</summary>
    public int Filled => Rows - _shapes[(int)CellShape.Blank];

    /// <summary>True when hardly a row leaves it blank.</summary>
    public bool IsAlwaysFilled => Rows > 1 && Filled * 100 >= Rows * 99;

    /// <summary>True when most of its cells have that shape.</summary>
    public bool IsMostly(CellShape shape) => Filled > 0 && _shapes[(int)shape] * 2 > Filled;

    /// <summary>True when the column was filled often and its cells have that shape at most once in fifty times.</summary>
    public bool NeverHolds(CellShape shape) => Filled >= LeastFilled && _shapes[(int)shape] * 50 <= Filled;

    /// <summary>True when the column was filled often and held anything but days, amounts and whole numbers at most once in fifty cells.</summary>
    public bool HoldsFigures => Filled >= LeastFilled && (Filled - _shapes[(int)CellShape.Date] - _shapes[(int)CellShape.Amount] - _shapes[(int)CellShape.Whole]) * 50 <= Filled;

    /// <summary>Learns from a cell.</summary>
    public void Learn(ReadOnlySpan<char> cell)
    {
        Rows++;
        CellShape shape = CellShapes.Of(cell);
        _shapes[(int)shape]++;
        if (shape != CellShape.Blank)
        {
            ReadOnlySpan<char> text = cell.Trim();
            _byText.TryGetValue(text, out int seen);
            _byText[text] = seen + 1;
            _once += seen == 0 ? 1 : seen == 1 ? -1 : 0;
        }
    }

    /// <summary>
    /// Log of how likely the column holds this cell: as often as it has shown the text, and for texts it has not shown as
    /// often as such texts come up (Good 1953: the share of those seen once) and have that shape.
    /// </summary>
    public double LogLikelihood(ReadOnlySpan<char> cell)
    {
        CellShape shape = CellShapes.Of(cell);
        double shapes = (_shapes[(int)shape] + 0.5) / (Rows + (0.5 * CellShapes.Count));
        if (shape == CellShape.Blank)
        {
            return Math.Log(shapes);
        }

        double isNew = (_once + 1.0) / (Filled + 1);
        double seen = _byText.TryGetValue(cell.Trim(), out int times) ? (double)times / Rows : 0;
        return Math.Log(((1 - isNew) * seen) + (isNew * shapes * OneNewText));
    }
}
