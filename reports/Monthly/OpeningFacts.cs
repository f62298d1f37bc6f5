using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Monthly;

/// <summary>What is known of the calls of one month.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Calls">Jobs opened in it.</param>
/// <param name="Open">Of those, still open.</param>
/// <param name="VisitsKnown">Of the closed ones, those that tell whether the first visit finished them.</param>
/// <param name="FirstVisit">Share of those finished at the first visit.</param>
/// <param name="Diagnosed">Calls whose cause is known.</param>
/// <param name="NoPart">Share of those that needed no part.</param>
/// <param name="TopComponent">The component most often at fault; null: none known.</param>
/// <param name="TopCalls">Calls it was at fault in.</param>
/// <param name="TopShare">Its share of the calls whose cause is known.</param>
/// <param name="ModelUnknown">Calls without a known model family.</param>
/// <param name="AgeUnknown">Calls without a known age.</param>
/// <param name="ComplaintUnknown">Calls whose complaint is missing or in no table.</param>
public sealed record MonthFacts(
    DateOnly Month, long Calls, long Open, long VisitsKnown, Estimate FirstVisit, long Diagnosed, Estimate NoPart,
    string? TopComponent, long TopCalls, Estimate TopShare, long ModelUnknown, long AgeUnknown, long ComplaintUnknown)
{
    /// <summary>A month without calls.</summary>
    public static MonthFacts None(DateOnly month)
    {
        Estimate none = Estimate.None("no calls");
        return new MonthFacts(month, 0, 0, 0, none, 0, none, null, 0, none, 0, 0, 0);
    }
}

/// <summary>A month beside the month before it and the same month a year earlier.</summary>
/// <param name="Now">The month.</param>
/// <param name="Before">The month before; null: the data does not reach back so far.</param>
/// <param name="YearAgo">The same month a year earlier; null: the data does not reach back so far.</param>
/// <param name="Rising">What is rising, one short text each; null: not computed.</param>
/// <param name="CameBack">The last month whose repairs were watched long enough to tell which came back; null: none, or not computed.</param>
/// <param name="CallbackDays">Days within which a return counts as a callback.</param>
/// <param name="Rejected">Rows that could not be read, all files.</param>
/// <param name="Read">Rows read, all files.</param>
/// <param name="AsOf">Last day the data speaks for.</param>
public sealed record OpeningFacts(
    MonthFacts Now, MonthFacts? Before, MonthFacts? YearAgo, IReadOnlyList<string>? Rising,
    ReturnMonth? CameBack, int CallbackDays, long Rejected, long Read, DateOnly AsOf)
{
    /// <summary>Repairs of the month before the one of <see cref="CameBack"/>; null: not watched, or before the data.</summary>
    public ReturnMonth? CameBackBefore { get; init; }

    /// <summary>Repairs of the same month a year earlier; null likewise.</summary>
    public ReturnMonth? CameBackYearAgo { get; init; }
}
