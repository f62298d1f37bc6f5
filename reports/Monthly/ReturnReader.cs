using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads which repairs came back.</summary>
internal static class ReturnReader
{
    // Two years, so that the same month a year earlier can stand beside a headline.
    private const int MonthsKept = 25;

    private sealed record Row(string Kind, string Member, long Repairs, long CameBack, Estimate Share, long StillWatched);

    public static ReturnFacts? Read(Database database, MonthlyOptions query)
    {
        if (!database.Has("callback_shares") || !database.Has("callbacks"))
        {
            return null;
        }

        IReadOnlyList<Row> rows = database.Read("queries/report/callback_shares.sql", r => new Row(
            r.GetString(0), r.GetString(1), r.GetInt64(2), r.GetInt64(3), r.Estimate(4, r.Text(7)), r.GetInt64(8)), ("days", query.CallbackDays));
        double? all = rows.FirstOrDefault(r => r.Kind == "all")?.Share.Value;
        ReturnMonth[] months = [.. rows.Where(r => r.Kind == "month")
            .Select(r => new ReturnMonth(DateOnly.Parse(r.Member, CultureInfo.InvariantCulture), r.Repairs, r.CameBack, r.Share, r.StillWatched))
            .Where(m => m.Month <= query.Month && m.Repairs > 0).OrderBy(m => m.Month)];
        ReturnRow[] components = [.. rows.Where(r => r.Kind == "component" && r.Repairs > 0)
            .Select(r => new ReturnRow(r.Member, r.Repairs, r.CameBack, r.Share, all is not null && r.Share.Lower > all && r.CameBack >= 3))];
        long cameBack = months.TakeLast(12).Sum(m => m.CameBack);
        string overall = all is { } share ? $"Over all months {Format.Percent(share)} came back. " : "";
        return new ReturnFacts(
            query.CallbackDays, [.. months.TakeLast(MonthsKept)], components,
            database.Read("queries/report/callback_jobs.sql", r => new ReturnJob(
                r.GetString(0), r.Day(1)!.Value, r.GetString(2), r.Int(3), r.Text(4), r.Text(5), r.Text(6)), ("month", query.Month)),
            months.Length == 0 ? null : cameBack * query.SecondVisitCost,
            overall + "Repairs on units that cannot be followed are left out, and customers who called another shop leave no trace, so the shares are lower bounds. "
            + "A component stands out when its whole interval lies above the share of all repairs.");
    }
}
