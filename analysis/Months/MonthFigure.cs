using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Months;

/// <summary>The calls of one month in figures.</summary>
public sealed record MonthFigure
{
    /// <summary>First day of the month of the call.</summary>
    public required DateOnly Month { get; init; }

    /// <summary>Jobs opened.</summary>
    public required long Calls { get; init; }

    /// <summary>Of them not closed yet: neither cause nor visits are known.</summary>
    public required long StillOpen { get; init; }

    /// <summary>Of the calls, those of which the log does not say whether they are finished; neither open nor closed.</summary>
    public required long EndNotTold { get; init; }

    /// <summary>Closed jobs that tell whether the first visit finished them.</summary>
    public required long VisitsKnown { get; init; }

    /// <summary>Share of those finished at the first visit, or null if there were none.</summary>
    public double? FirstVisitShare { get; init; }

    /// <summary>Lower end of Wilson's 95 % interval.</summary>
    public double? FirstVisitLower { get; init; }

    /// <summary>Upper end.</summary>
    public double? FirstVisitUpper { get; init; }

    /// <summary>Failure calls whose cause is known; preventive visits and the like have none.</summary>
    public required long CauseKnown { get; init; }

    /// <summary>
    /// Share of those that needed no part, or null if there were none, or if no job of any month is known to have needed
    /// none: then the log does not record it, and the share is unknown, not 0.
    /// </summary>
    public double? NoPartShare { get; init; }

    /// <summary>Lower end of Wilson's 95 % interval.</summary>
    public double? NoPartLower { get; init; }

    /// <summary>Upper end.</summary>
    public double? NoPartUpper { get; init; }

    /// <summary>Jobs of no known model family.</summary>
    public required long FamilyUnknown { get; init; }

    /// <summary>Jobs of unknown age.</summary>
    public required long AgeUnknown { get; init; }

    /// <summary>Jobs without a complaint, or with one in no table.</summary>
    public required long ComplaintUnknown { get; init; }

    /// <summary>All months of a session in which the month tables were built.</summary>
    public static IReadOnlyList<MonthFigure> Table(Database database)
    {
        IReadOnlyList<MonthCount> counts = database.ReadTable<MonthCount>("month_counts");
        bool recorded = counts.Any(c => c.NoPart > 0);
        return [.. counts.Select(c => From(c, recorded))];
    }

    private sealed record MonthCount(
        DateOnly Month, long Calls, long StillOpen, long EndNotTold, long VisitsKnown, long FirstVisitDone, long CauseKnown, long NoPart,
        long FamilyUnknown, long AgeUnknown, long ComplaintUnknown);

    private static MonthFigure From(MonthCount c, bool noPartRecorded)
    {
        Estimate first = Proportion.Wilson(c.FirstVisitDone, c.VisitsKnown);
        Estimate noPart = noPartRecorded ? Proportion.Wilson(c.NoPart, c.CauseKnown) : Estimate.None("not recorded");
        return new MonthFigure
        {
            Month = c.Month,
            Calls = c.Calls,
            StillOpen = c.StillOpen,
            EndNotTold = c.EndNotTold,
            VisitsKnown = c.VisitsKnown,
            FirstVisitShare = first.Value,
            FirstVisitLower = first.Lower,
            FirstVisitUpper = first.Upper,
            CauseKnown = c.CauseKnown,
            NoPartShare = noPart.Value,
            NoPartLower = noPart.Lower,
            NoPartUpper = noPart.Upper,
            FamilyUnknown = c.FamilyUnknown,
            AgeUnknown = c.AgeUnknown,
            ComplaintUnknown = c.ComplaintUnknown,
        };
    }
}
