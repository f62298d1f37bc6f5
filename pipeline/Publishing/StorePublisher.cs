using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>
/// Writes the store's tables to a new folder, then makes it current in one step. Tables that grow over time are
/// partitioned by year, <c>jobs/year=2026</c>, so that engines with partition pruning read only what they need.
/// </summary>
internal static class StorePublisher
{
    private const string FileName = "part-0.parquet";

    private const int GroupRows = 40_960;

    /// <summary>Publishes the session's tables of the store.</summary>
    /// <returns>Rows written.</returns>
    public static long Publish(Database database, StoreSwap folders, TimeProvider clock)
    {
        folders.Repair();
        string folder = folders.Begin(clock.GetUtcNow());
        long rows = 0;
        foreach (string table in StoreTables.Names)
        {
            string target = Directory.CreateDirectory(Path.Combine(folder, table)).FullName;
            if (StoreTables.DayOf(table) is { } day)
            {
                WriteYears(database, table, day, target);
            }
            else
            {
                Write(database, Database.Quote(table), target);
            }

            rows += database.Count(table);
        }

        folders.Commit(folder);
        return rows;
    }

    private static void WriteYears(Database database, string table, string day, string folder)
    {
        (string, string)[] places = [("table", Database.Quote(table)), ("day", Database.Quote(day))];
        foreach (long year in database.Query<long>(SqlText.Fill("statements/years.sql", places)))
        {
            string target = Directory.CreateDirectory(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"year={year:0000}"))).FullName;
            string rows = SqlText.Fill("statements/rows_of_year.sql", [.. places, ("year", year.ToString(CultureInfo.InvariantCulture))]);
            Write(database, $"({rows})", target);
        }
    }

    private static void Write(Database database, string rows, string folder) =>
        MemoryRetry.Run(database, MemoryRetry.WritingRungs(database), () => database.Execute(
            $"copy {rows} to {Database.Literal(Path.Combine(folder, FileName).Replace('\\', '/'))} (format parquet, compression zstd, row_group_size {GroupRows})"));
}
