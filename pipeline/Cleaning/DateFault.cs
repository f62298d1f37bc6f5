namespace PartsSignal.Pipeline.Cleaning;

/// <summary>The likely cause when a cell is no day, in words that do not repeat the cell.</summary>
internal static class DateFault
{
    private const string Type = "Type the date as 2026-08-03.";

    /// <summary>What is wrong and what to do.</summary>
    /// <param name="cell">A cell that <see cref="DateText.TryDay"/> does not read.</param>
    /// <param name="order">The file's date order.</param>
    public static (string What, string Suggestion) Explain(ReadOnlySpan<char> cell, DateOrder order)
    {
        if (!cell.ContainsAnyInRange('0', '9'))
        {
            return ("there is no date in it", Type);
        }

        if (NamesMissingDay(cell, order))
        {
            return ("the calendar has no such day", Type);
        }

        foreach (DateOrder other in Enum.GetValues<DateOrder>())
        {
            if (other != order && DateText.TryDay(cell, other, out _))
            {
                return ($"the date is not in the file's order, which is {Name(order)}", Type[..^1] + ", or set dateOrder in the column map.");
            }
        }

        return DateText.TryNumbers(cell, out _, out _, out _) ? ("the calendar has no such day", Type) : ("it is not written as a date", Type);
    }

    // The 31st of a month that is shorter, in the file's own order.
    private static bool NamesMissingDay(ReadOnlySpan<char> cell, DateOrder order)
    {
        if (!DateText.TryNumbers(cell, out int first, out int second, out int third))
        {
            return false;
        }

        (int month, int day) = order switch
        {
            DateOrder.MonthFirst => (first, second),
            DateOrder.YearFirst when third < 100 => (second, third),
            _ => (second, first),
        };
        return month is >= 1 and <= 12 && day is >= 29 and <= 31;
    }

    private static string Name(DateOrder order) => order switch
    {
        DateOrder.MonthFirst => "month first",
        DateOrder.YearFirst => "year first",
        _ => "day first",
    };
}
