namespace PartsSignal.Analysis.Sql;

/// <summary>The tables of the store, and how a session sees them.</summary>
public static class StoreTables
{
    /// <summary>All table names, in the order they are written.</summary>
    public static readonly IReadOnlyList<string> Names =
    [
        "models", "parts", "supersessions", "part_aliases", "units", "build_dates", "jobs", "job_parts", "part_orders",
        "fitments", "van_counts", "rejects", "loads", "job_history", "data_faults",
    ];

    /// <summary>The day by whose year a table's files are parted; null: the table is one file.</summary>
    public static string? DayOf(string table) => table switch
    {
        "jobs" => "opened_on",
        "part_orders" => "ordered_on",
        _ => null,
    };

    /// <summary>
    /// Makes every table visible: a view over its Parquet files where the folder has any, an empty table of the
    /// contract's shape where it has none, so that every query runs and answers with no rows.
    /// </summary>
    /// <param name="database">The session.</param>
    /// <param name="folder">Folder of one published store, with a folder per table.</param>
    public static void Attach(Database database, string folder)
    {
        foreach (string name in Names)
        {
            string table = Path.Combine(folder, name);
            if (Directory.Exists(table) && Directory.EnumerateFiles(table, "*.parquet", SearchOption.AllDirectories).Any())
            {
                string files = Database.Literal(Path.Combine(table, "**", "*.parquet").Replace('\\', '/'));
                database.Execute($"create or replace view {Database.Quote(name)} as from read_parquet({files}, hive_partitioning = false)");
            }
            else
            {
                CreateEmpty(database, name);
            }
        }
    }

    /// <summary>Creates one empty table of the contract's shape.</summary>
    public static void CreateEmpty(Database database, string name) => database.Run($"marts/{name}.contract.sql");
}
