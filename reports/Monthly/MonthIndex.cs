using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>One month on the list of months.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Calls">Calls taken.</param>
/// <param name="FirstVisitShare">Share finished at the first visit.</param>
public sealed record IndexedMonth(DateOnly Month, long Calls, Estimate FirstVisitShare)
{
    /// <summary>True if its report stands beside the list.</summary>
    public bool Written { get; init; }
}

/// <summary>What the page that lists all months shows.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="AsOf">Last day the data speaks for.</param>
/// <param name="Months">The months, in any order.</param>
public sealed record MonthIndexView(string Shop, DateOnly AsOf, IReadOnlyList<IndexedMonth> Months);

/// <summary>The page that lists all months.</summary>
public static class MonthIndex
{
    /// <summary>All months from the first call to the last day of the data, oldest first; empty if they were not counted.</summary>
    public static IReadOnlyList<IndexedMonth> Read(Database database) =>
        database.Has("month_figures") ? [.. database.ReadTable<MonthCalls>("month_figures").OrderBy(m => m.Month).Select(m => new IndexedMonth(m.Month, m.Calls, m.FirstVisitShare))] : [];

    /// <summary>The document's text, newest month first.</summary>
    public static string Render(string shop, DateOnly asOf, IReadOnlyList<IndexedMonth> months) => PageRenderer.Render<MonthIndexPage>(new MonthIndexView(shop, asOf, months));

    private sealed record MonthCalls(DateOnly Month, long Calls, Estimate FirstVisitShare);
}
