namespace PartsSignal.Analysis.Sql;

/// <summary>The tables of the store, and how a session sees them.</summary>
public static class StoreTables
{
    /// <summary>All table names, in the order they are written.</summary>
    public static readonly IReadOnlyList<string> Names =
    [
        "models", "parts", "supersessions", "part_aliases", "units", "build_dates", "jobs", "job_parts", "part_orders",
        "fitments", "van_counts", "rejects", "loads", "job_history", "data_faults", "own_complaint_kinds", "date_codes", "van_labels",
    ];

    /// <summary>The day by whose year a table's files are parted, or null if the table is one file.</summary>
    public static string? DayOf(string table) => table switch
    {
        "jobs" => "opened_on",
        "part_orders" => "ordered_on",
        _ => null,
    };

    /// <summary>
    /// Makes every table visible: a view over its Parquet files where the folder has any, an empty table of the
    /// contract's shape where it has none, so that every query runs and answers with no rows. Columns that the store of
    /// an earlier version lacks are null.
    /// </summary>
    /// <param name="database">The session.</param>
    /// <param name="folder">Folder of one published store, with a folder per table.</param>
    public static void Attach(Database database, string folder)
    {
        // The shapes stand in a schema of their own, for the store of an earlier version.
        database.Execute("drop schema if exists shape cascade");
        database.Execute("create schema shape");
        database.Execute("set schema = 'shape'");
        foreach (string name in Names)
        {
            CreateEmpty(database, name);
        }

        database.Execute("set schema = 'main'");
        var files = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string name in Names)
        {
            string table = Path.Combine(folder, name);
            if (Directory.Exists(table) && Directory.EnumerateFiles(table, "*.parquet", SearchOption.AllDirectories).Any())
            {
                files.Add(name, Database.Literal(Path.Combine(table, "**", "*.parquet").Replace('\\', '/')));
                View("store_view", name);
            }
            else
            {
                CreateEmpty(database, name);
            }
        }

        foreach (string name in database.Read<string>("queries/session/tables_that_lack_columns.sql").Where(files.ContainsKey))
        {
            View("earlier_store_view", name);
        }

        void View(string statement, string name) =>
            database.Execute(SqlText.Fill($"statements/{statement}.sql", ("table", Database.Quote(name)), ("files", files[name])));
    }

    /// <summary>Creates one empty table of the contract's shape.</summary>
    public static void CreateEmpty(Database database, string name) => database.Run($"marts/{name}.contract.sql");
}
