using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads the months there are.</summary>
public static class MonthList
{
    /// <summary>All months from the first call to the last day of the data, oldest first; none where they were not counted.</summary>
    public static IReadOnlyList<IndexedMonth> Read(Database database) => !database.Has("month_figures") ? [] :
        database.Read("queries/report/months.sql", r => new IndexedMonth(r.Day(0)!.Value, r.GetInt64(1), Format.Share(r.Estimate(2, "not known")), Written: false));
}
