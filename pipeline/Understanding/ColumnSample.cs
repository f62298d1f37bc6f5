using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Cells of one column, row by row, with what they read as.</summary>
internal sealed class ColumnSample
{
    private const int LookedAt = 200;
    private const int CodeLength = 7;

    /// <summary>Reads the cells.</summary>
    /// <param name="name">Header, or <c>#3</c> where there is none.</param>
    /// <param name="index">Position from 0.</param>
    /// <param name="cells">One for each sampled row; empty where nothing is known.</param>
    public ColumnSample(string name, int index, string[] cells)
    {
        Name = name;
        Index = index;
        Cells = cells;
        Filled = cells.Count(c => c.Length > 0);
        (Numbers, Days, Timed) = (new double?[cells.Length], new int?[cells.Length], 0);
        (DateOrder order, NumberStyle style) = Styles(cells);
        for (int i = 0; i < cells.Length; i++)
        {
            if (cells[i].Length == 0)
            {
                continue;
            }

            if (DateText.TryDay(cells[i], order, out DateOnly day))
            {
                Days[i] = day.DayNumber;
                Timed += cells[i].Contains(':') && !cells[i].Contains("00:00", StringComparison.Ordinal) ? 1 : 0;
            }
            else if (MoneyText.TryRead(cells[i], style, out decimal number))
            {
                Numbers[i] = (double)number;
            }
        }

        DateShare = Share(Days.Count(d => d is not null));
        NumberShare = Share(Numbers.Count(n => n is not null));
        (Codes, Distinct) = Coded(cells);
    }

    /// <summary>Header, or <c>#3</c> where there is none.</summary>
    public string Name { get; }

    /// <summary>Position from 0.</summary>
    public int Index { get; }

    /// <summary>Sampled cells; empty where nothing is known.</summary>
    public string[] Cells { get; }

    /// <summary>How many of them hold something.</summary>
    public int Filled { get; }

    /// <summary>Amounts, where a cell is one and no date.</summary>
    public double?[] Numbers { get; }

    /// <summary>Days, where a cell is one.</summary>
    public int?[] Days { get; }

    /// <summary>Dates with a time of day.</summary>
    public int Timed { get; }

    /// <summary>Number of each cell's value; -1 where empty.</summary>
    public int[] Codes { get; }

    /// <summary>Different values in the sample.</summary>
    public int Distinct { get; }

    /// <summary>Share of dates among the filled cells.</summary>
    public double DateShare { get; }

    /// <summary>Share of amounts among the filled cells.</summary>
    public double NumberShare { get; }

    /// <summary>Values of the whole column; what relates it to other tables.</summary>
    public required ValueSet Values { get; init; }

    /// <summary>How many columns of the same stem stand behind this one, itself included: <c>Part 1</c>, <c>Part 2</c>.</summary>
    public int Repeats { get; init; } = 1;

    /// <summary>Headers of all the columns it stands for, its own first; empty: only its own.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];

    /// <summary>The filled cells.</summary>
    public IEnumerable<string> Texts => Cells.Where(c => c.Length > 0);

    /// <summary>True for a column of dates.</summary>
    public bool IsDates => Filled > 0 && DateShare >= 0.6;

    /// <summary>True for a column of amounts.</summary>
    public bool IsNumbers => Filled > 0 && NumberShare >= 0.8;

    /// <summary>True for a column of numbers with decimals: prices and sums, which name nothing. Numbers of many digits with marks in each may be codes.</summary>
    public bool IsAmounts => IsNumbers && Texts.Take(LookedAt).Any(t => t.AsSpan().ContainsAny(".,")) && !Texts.Take(LookedAt).All(t => t.Count(c => c is '.' or '-') >= 1 && t.Length >= CodeLength);

    private double Share(int count) => Filled == 0 ? 0 : (double)count / Filled;

    private static (DateOrder Order, NumberStyle Style) Styles(string[] cells)
    {
        var dates = new DateOrderVote();
        var numbers = new NumberStyleVote();
        foreach (string cell in cells)
        {
            dates.Add(cell);
            numbers.Add(cell);
        }

        return (dates.Decide() ?? DateOrder.DayFirst, numbers.Decide() ?? NumberStyle.Point);
    }

    private static (int[] Codes, int Distinct) Coded(string[] cells)
    {
        var known = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var codes = new int[cells.Length];
        for (int i = 0; i < cells.Length; i++)
        {
            if (cells[i].Length == 0)
            {
                codes[i] = -1;
            }
            else if (!known.TryGetValue(cells[i], out codes[i]))
            {
                known.Add(cells[i], codes[i] = known.Count);
            }
        }

        return (codes, known.Count);
    }
}
