namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Collects what the dates of one file say about their order. A day over twelve decides.</summary>
internal sealed class DateOrderVote
{
    private int _dayFirst;
    private int _monthFirst;
    private int _yearFirst;
    private int _open;

    /// <summary>Dates in which order matters.</summary>
    public int Ambiguous => _open;

    /// <summary>Dates that can only be day-first.</summary>
    public int DayFirst => _dayFirst;

    /// <summary>Dates that can only be month-first.</summary>
    public int MonthFirst => _monthFirst;

    /// <summary>True when some date decided.</summary>
    public bool IsDecided => _dayFirst + _monthFirst + _yearFirst > 0;

    /// <summary>True when the file's dates contradict each other.</summary>
    public bool IsMixed => (_dayFirst > 0 ? 1 : 0) + (_monthFirst > 0 ? 1 : 0) + (_yearFirst > 0 ? 1 : 0) > 1;

    /// <summary>Looks at one cell.</summary>
    public void Add(ReadOnlySpan<char> cell)
    {
        if (!DateText.TryNumbers(cell, out int first, out int second, out int third))
        {
            return;
        }

        if (first > 12 && second <= 12)
        {
            // 26/08/13 may be either; 26/08/2013 and 32 and above cannot.
            _dayFirst += first <= 31 ? 1 : 0;
            _yearFirst += first > 31 ? 1 : 0;
        }
        else if (second > 12 && first <= 12)
        {
            _monthFirst++;
        }
        else if (first <= 12 && second <= 12 && first != second && third >= 0)
        {
            _open++;
        }
    }

    /// <summary>The order the most dates demand, or null if none demands one.</summary>
    public DateOrder? Decide() =>
        !IsDecided ? null
        : _yearFirst >= Math.Max(_dayFirst, _monthFirst) ? DateOrder.YearFirst
        : _dayFirst >= _monthFirst ? DateOrder.DayFirst : DateOrder.MonthFirst;
}

/// <summary>Which of the numbers of a date comes first; one order holds for a whole file.</summary>
internal enum DateOrder
{
    /// <summary>Day, month, year.</summary>
    DayFirst,

    /// <summary>Month, day, year.</summary>
    MonthFirst,

    /// <summary>Year, month, day.</summary>
    YearFirst,
}
