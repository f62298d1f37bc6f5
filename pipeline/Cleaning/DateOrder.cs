namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Which of the numbers of a date comes first; one order holds for a whole file.</summary>
public enum DateOrder
{
    /// <summary>Day, month, year.</summary>
    DayFirst,

    /// <summary>Month, day, year.</summary>
    MonthFirst,

    /// <summary>Year, month, day.</summary>
    YearFirst,
}
