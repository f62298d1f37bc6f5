namespace PartsSignal.Pipeline.Reporting;

/// <summary>Which month a report is about when nobody says.</summary>
public static class ReportMonths
{
    /// <summary>The last month that has ended by the last day of the data.</summary>
    public static DateOnly Last(DateOnly asOf)
    {
        var first = new DateOnly(asOf.Year, asOf.Month, 1);
        return asOf.AddDays(1).Day == 1 ? first : first.AddMonths(-1);
    }
}
