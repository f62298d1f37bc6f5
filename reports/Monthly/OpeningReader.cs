using PartsSignal.Analysis.Sql;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads the month's headline figures.</summary>
internal static class OpeningReader
{
    public static OpeningFacts Read(Database database, MonthlyOptions query, RisingFacts? rising, ReturnFacts? returns, DataQualityFacts mending)
    {
        Dictionary<DateOnly, MonthFacts> months = database.Has("month_figures")
            ? database.Read("queries/report/month_figures.sql", r => new MonthFacts(
                r.Day(0)!.Value, r.GetInt64(1), r.GetInt64(2), r.GetInt64(3), r.Estimate(4, "no closed job of the month tells its visits"), r.GetInt64(7),
                r.Estimate(8, "no cause is known"), r.Text(11), r.GetInt64(12), r.Estimate(13), r.GetInt64(16), r.GetInt64(17), r.GetInt64(18)),
                ("month", query.Month)).ToDictionary(m => m.Month)
            : [];
        ReturnMonth? followed = returns?.Months.LastOrDefault(m => m.Month <= query.Month && m.StillWatched == 0 && m.Share.Value is not null);
        return new OpeningFacts(
            months.GetValueOrDefault(query.Month) ?? MonthFacts.None(query.Month),
            months.GetValueOrDefault(query.Month.AddMonths(-1)),
            months.GetValueOrDefault(query.Month.AddYears(-1)),
            rising is null ? null : [.. rising.Alarms.Select(a => a.InShort)],
            followed, query.CallbackDays, mending.Files.Sum(f => f.Rejected), mending.Files.Sum(f => f.Read), query.AsOf)
        {
            CameBackBefore = returns?.Months.FirstOrDefault(m => m.Month == followed?.Month.AddMonths(-1)),
            CameBackYearAgo = returns?.Months.FirstOrDefault(m => m.Month == followed?.Month.AddYears(-1)),
        };
    }
}
