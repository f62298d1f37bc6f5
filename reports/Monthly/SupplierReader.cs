using PartsSignal.Analysis.Sql;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads supplier quality and lead times.</summary>
internal static class SupplierReader
{
    private const int WatchDays = 90;

    public static SupplierFacts? Read(Database database)
    {
        if (!database.Has("supplier_quality") || !database.Has("lead_times"))
        {
            return null;
        }

        return new SupplierFacts(
            database.Read("queries/report/supplier_quality.sql", r => new SupplierQuality(
                r.GetString(0), r.GetString(1), r.GetInt64(2), r.GetInt64(3), r.Estimate(4, r.Text(7)), r.Double(8), r.GetBoolean(9))),
            database.Read("queries/report/lead_times.sql", r => new SupplierLeadTime(
                r.GetString(0), r.GetInt64(1), r.GetInt64(2), r.Double(3), r.Double(4), r.Estimate(5, "too few pieces"))),
            WatchDays);
    }
}
