using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Store;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>Writes the store's tables beside the current store and then makes them current, all at once.</summary>
public static class StorePublisher
{
    /// <summary>Publishes the session's tables of the store.</summary>
    /// <returns>Rows written.</returns>
    public static long Publish(Database database, StoreFolders folders, TimeProvider clock)
    {
        folders.Repair();
        string folder = folders.Begin(clock.GetUtcNow());
        long rows = 0;
        foreach (string table in StoreTables.Names)
        {
            string target = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, table)).FullName, "part-0.parquet");
            database.Execute($"copy {Database.Quote(table)} to {Database.Literal(target.Replace('\\', '/'))} (format parquet, compression zstd)");
            rows += database.Count(table);
        }

        folders.Commit(folder);
        return rows;
    }
}
