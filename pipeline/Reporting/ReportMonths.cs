using PartsSignal.Reports.Monthly;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Which month a report is about when nobody says.</summary>
internal static class ReportMonths
{
    /// <summary>The last month that has ended by the last day of the data.</summary>
    public static DateOnly Last(DateOnly asOf)
    {
        var first = new DateOnly(asOf.Year, asOf.Month, 1);
        return asOf.AddDays(1).Day == 1 ? first : first.AddMonths(-1);
    }

    /// <summary>The newest month that has ended and has calls; the last that has ended where none has.</summary>
    /// <param name="months">Months with their calls.</param>
    /// <param name="asOf">Last day the data speaks for.</param>
    public static DateOnly NewestWithCalls(IEnumerable<IndexedMonth> months, DateOnly asOf)
    {
        DateOnly last = Last(asOf);
        return months.Where(m => m.Calls > 0 && m.Month <= last).Select(m => m.Month).DefaultIfEmpty(last).Max();
    }
}
