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

    /// <summary>Closed jobs that tell whether the first visit finished them.</summary>
    public required long VisitsKnown { get; init; }

    /// <summary>Share of those finished at the first visit; null: there were none.</summary>
    public double? FirstVisitShare { get; init; }

    /// <summary>Lower end of Wilson's 95 % interval.</summary>
    public double? FirstVisitLower { get; init; }

    /// <summary>Upper end.</summary>
    public double? FirstVisitUpper { get; init; }

    /// <summary>Jobs whose cause is known.</summary>
    public required long CauseKnown { get; init; }

    /// <summary>Share of those that needed no part; null: there were none.</summary>
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
    public static IReadOnlyList<MonthFigure> Table(Database database) => database.Read("Months/read_month_counts.sql", r =>
    {
        Estimate first = Proportion.Wilson(r.GetInt64(4), r.GetInt64(3));
        Estimate noPart = Proportion.Wilson(r.GetInt64(6), r.GetInt64(5));
        return new MonthFigure
        {
            Month = r.Day(0)!.Value,
            Calls = r.GetInt64(1),
            StillOpen = r.GetInt64(2),
            VisitsKnown = r.GetInt64(3),
            FirstVisitShare = first.Value,
            FirstVisitLower = first.Lower,
            FirstVisitUpper = first.Upper,
            CauseKnown = r.GetInt64(5),
            NoPartShare = noPart.Value,
            NoPartLower = noPart.Lower,
            NoPartUpper = noPart.Upper,
            FamilyUnknown = r.GetInt64(7),
            AgeUnknown = r.GetInt64(8),
            ComplaintUnknown = r.GetInt64(9),
        };
    });
}
