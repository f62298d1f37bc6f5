using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>The calls of one month.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Calls">Jobs opened in it.</param>
/// <param name="StillOpen">Of those, still open.</param>
/// <param name="VisitsKnown">Of the closed ones, repairs that record whether the first visit finished them.</param>
/// <param name="FirstVisitShare">Share of those finished at the first visit.</param>
/// <param name="CauseKnown">Calls whose cause is known.</param>
/// <param name="NoPartShare">Share of those that needed no part.</param>
/// <param name="TopComponent">The component most often at fault, or null if none is known.</param>
/// <param name="TopCalls">Calls it was at fault in.</param>
/// <param name="TopShare">Its share of the calls whose cause is known.</param>
/// <param name="FamilyUnknown">Calls without a known model family.</param>
/// <param name="AgeUnknown">Calls without a known age.</param>
/// <param name="ComplaintUnknown">Calls whose complaint is missing or in no table.</param>
internal sealed record MonthFacts(
    DateOnly Month, long Calls, long StillOpen, long VisitsKnown, Estimate FirstVisitShare, long CauseKnown, Estimate NoPartShare,
    string? TopComponent, long TopCalls, Estimate TopShare, long FamilyUnknown, long AgeUnknown, long ComplaintUnknown)
{
    /// <summary>Calls of which the log does not say whether they are finished; they are neither open nor closed.</summary>
    public long EndNotTold { get; init; }

    /// <summary>Closed calls.</summary>
    public long Closed => Calls - StillOpen - EndNotTold;

    /// <summary>A month without calls.</summary>
    public static MonthFacts None(DateOnly month)
    {
        Estimate none = Estimate.None("no calls");
        return new MonthFacts(month, 0, 0, 0, none, 0, none, null, 0, none, 0, 0, 0);
    }
}

/// <summary>How many calls of the month needed one thing.</summary>
/// <param name="Need">A component, <c>none</c> or <c>other_part</c>.</param>
/// <param name="Calls">Its calls.</param>
internal sealed record NeedCalls(string Need, long Calls);

/// <summary>A month beside the month before it and the same month a year earlier.</summary>
/// <param name="Now">The month.</param>
/// <param name="Before">The month before, or null if the data does not reach back so far.</param>
/// <param name="YearAgo">The same month a year earlier, or null likewise.</param>
/// <param name="Rising">What is rising, one short text each, or null if not computed.</param>
/// <param name="CameBack">The last month whose repairs were all watched for the whole callback window, or null if there is none.</param>
/// <param name="CallbackDays">Days within which a return counts as a callback.</param>
/// <param name="Rejected">Rows that could not be read, all files.</param>
/// <param name="Read">Rows read, all files.</param>
/// <param name="AsOf">Last day the data covers.</param>
internal sealed record OpeningFacts(
    MonthFacts Now, MonthFacts? Before, MonthFacts? YearAgo, IReadOnlyList<string>? Rising,
    ReturnMonth? CameBack, int CallbackDays, long Rejected, long Read, DateOnly AsOf)
{
    /// <summary>Suspect batches, one short text each, clearest first.</summary>
    public IReadOnlyList<string> Batches { get; init; } = [];

    /// <summary>What the calls of the month needed, most calls first.</summary>
    public IReadOnlyList<NeedCalls> Needs { get; init; } = [];

    /// <summary>Repairs of the month before that of <see cref="CameBack"/>, or null.</summary>
    public ReturnMonth? CameBackBefore { get; init; }

    /// <summary>Repairs of the same month a year earlier, or null.</summary>
    public ReturnMonth? CameBackYearAgo { get; init; }
}

/// <summary>The month in five sentences, and its headline figures beside the month before and the year before.</summary>
internal static class OpeningSection
{
    public static OpeningFacts Read(Database database, MonthlyOptions options, RisingFacts? rising, ReturnFacts? returns, DataQualityFacts dataQuality, BadBatchFacts? batches = null)
    {
        Dictionary<DateOnly, MonthFacts> months = database.Has("month_figures")
            ? database.Read<MonthFacts>("queries/report/month_figures.sql", ("month", options.Month)).ToDictionary(m => m.Month)
            : [];
        ReturnMonth? watched = returns?.Months.LastOrDefault(m => m.Month <= options.Month && m.StillWatched == 0 && m.Share.Value is not null);
        return new OpeningFacts(
            months.GetValueOrDefault(options.Month) ?? MonthFacts.None(options.Month),
            months.GetValueOrDefault(options.Month.AddMonths(-1)),
            months.GetValueOrDefault(options.Month.AddYears(-1)),
            rising is null ? null : [.. rising.Alarms.Select(a => a.InShort)],
            watched, options.CallbackDays, dataQuality.Files.Sum(f => f.Rejected), dataQuality.Files.Sum(f => f.RowsRead), options.AsOf)
        {
            Needs = database.Has("month_needs") ? database.Read<NeedCalls>("queries/report/month_causes.sql", ("month", options.Month)) : [],
            Batches = batches is null ? [] : [.. batches.Batches.Where(b => b.Batch.SurvivesCustomer).Select(b => b.Batch.Name)],
            CameBackBefore = returns?.Months.FirstOrDefault(m => m.Month == watched?.Month.AddMonths(-1)),
            CameBackYearAgo = returns?.Months.FirstOrDefault(m => m.Month == watched?.Month.AddYears(-1)),
        };
    }

    public static Section Build(OpeningFacts facts) => new("month", "The month in five sentences", [new Sentences(OpeningSentences.Write(facts)), Headlines(facts)]);

    private static TableView Headlines(OpeningFacts facts)
    {
        MonthFacts?[] months = [facts.Now, facts.Before, facts.YearAgo];
        IReadOnlyList<object?> Row(string name, Func<MonthFacts, object> figure, CellKind kind, string basis) =>
            [name, .. months.Select(m => (object?)new Cell(m is null ? null : figure(m), kind)), basis];
        return new TableView("headlines", "Headline figures", "Jobs by the month of the call; a dash: the files do not reach that month.",
            [new("Figure"), new(Format.Month(facts.Now.Month)), new(Format.Month(facts.Now.Month.AddMonths(-1))), new(Format.Month(facts.Now.Month.AddYears(-1))), new("Basis")],
            [
                Row("Calls", m => m.Calls, CellKind.Count, "jobs opened"),
                Row("Still open", m => m.StillOpen, CellKind.Count, "of those, known to be open"),
                Row("Not known whether finished", m => m.EndNotTold, CellKind.Count, "of those"),
                Row("Finished at first visit", m => m.FirstVisitShare, CellKind.Share, "closed repairs that record their visits"),
                Row("Cause known", m => m.CauseKnown, CellKind.Count, "jobs with a diagnosis"),
                Row("Needed no part", m => m.NoPartShare, CellKind.Share, "jobs with a diagnosis"),
                Row("Age not known", m => m.AgeUnknown, CellKind.Count, "jobs opened"),
                Row("Model family not known", m => m.FamilyUnknown, CellKind.Count, "jobs opened"),
            ]);
    }
}
