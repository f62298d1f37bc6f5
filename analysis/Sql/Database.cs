using System.Data.Common;
using System.Globalization;
using DuckDB.NET.Data;

namespace PartsSignal.Analysis.Sql;

/// <summary>
/// One DuckDB session with the limits every part of the program uses. Statements come from embedded files;
/// values go in as parameters.
/// </summary>
public sealed class Database : IDisposable
{
    private const string SmallBlock = "16384";

    // Ways to make a query over many rows faster. None changes a result. Over few rows, looking for them takes a quarter of
    // the time. Filters are still pushed down: without that, a join by a condition would compare all pairs.
    private static readonly string[] ForManyRows =
    [
        "build_side_probe_side", "column_lifetime", "common_aggregate", "common_subexpressions", "common_subplan", "compressed_materialization", "cte_filter_pusher",
        "cte_inlining", "duplicate_groups", "empty_result_pullup", "expression_rewriter", "extension", "filter_pullup", "in_clause", "join_elimination",
        "join_filter_pushdown", "join_order", "late_materialization", "limit_pushdown", "regex_range", "reorder_filter", "row_group_pruner", "sampling_pushdown",
        "statistics_propagation", "sum_rewriter", "top_n_window_elimination", "unused_columns", "window_self_join",
    ];

    private readonly DuckDBConnection _connection;
    private string _memoryLimit;

    private Database(DuckDBConnection connection, DatabaseOptions options) => (_connection, _memoryLimit, HoldsLittle) = (connection, options.MemoryLimit, options.HoldsLittle);

    /// <summary>True where making a table costs less than reading a query once more, see <see cref="DatabaseOptions.HoldsLittle"/>.</summary>
    public bool HoldsLittle { get; }

    /// <summary>The open connection, for appenders.</summary>
    public DuckDBConnection Connection => _connection;

    /// <summary>Opens a session, in memory where the options name no file.</summary>
    /// <param name="options">Memory, threads, file and spill folder.</param>
    public static Database Open(DatabaseOptions? options = null)
    {
        options ??= new DatabaseOptions();
        var text = new DuckDBConnectionStringBuilder { DataSource = options.File ?? ":memory:" };
        text["memory_limit"] = options.MemoryLimit;
        text["threads"] = options.Threads.ToString(CultureInfo.InvariantCulture);
        text["autoinstall_known_extensions"] = "false";
        text["autoload_known_extensions"] = "false";
        if (options.SpillFolder is { } spill)
        {
            text["temp_directory"] = spill;
        }

        if (options.HoldsLittle)
        {
            // Every column of every table takes a block at least, and a new block is cleared.
            text["default_block_size"] = SmallBlock;
        }

        var connection = new DuckDBConnection(text.ConnectionString);
        connection.Open();
        var database = new Database(connection, options);
        if (options.HoldsLittle)
        {
            database.Execute($"set disabled_optimizers = {Literal(string.Join(',', ForManyRows))}");
        }

        if (options is { File: not null, FileIsTemporary: true })
        {
            database.Execute("pragma disable_checkpoint_on_shutdown");
        }

        if (options.Folders is { } folders)
        {
            // In this order: once the outside is shut, the list cannot be changed.
            string allowed = string.Join(", ", folders.Select(f => Literal(Path.GetFullPath(f).Replace('\\', '/').TrimEnd('/') + "/")));
            database.Execute($"set allowed_directories = [{allowed}]; set enable_external_access = false");
        }

        return database;
    }

    /// <summary>Runs the statements of one embedded file.</summary>
    /// <param name="path">Path under <c>Sql/</c>.</param>
    /// <param name="parameters">Named parameters (<c>$name</c> in the file).</param>
    public void Run(string path, params ReadOnlySpan<(string Name, object? Value)> parameters) =>
        Execute(SqlText.Read(path), parameters);

    /// <summary>Runs statements whose text the caller has; only for identifiers a parameter cannot carry (file paths, table names).</summary>
    public void Execute(string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        using DbCommand command = Command(sql, parameters);
        command.ExecuteNonQuery();
    }

    /// <summary>Changes how many threads the session may use, 1 or more.</summary>
    public void LimitThreads(int threads) => Execute($"set threads = {threads.ToString(CultureInfo.InvariantCulture)}");

    /// <summary>Changes how much memory the session may use before it spills, in the engine's own notation.</summary>
    public void LimitMemory(string limit)
    {
        // Setting the limit, even to what it is, makes the engine give all its free memory back to the system.
        if (limit != _memoryLimit)
        {
            Execute($"set memory_limit = {Literal(limit)}");
            _memoryLimit = limit;
        }
    }

    /// <summary>Rows of one embedded query, its columns matched by name: <c>opened_on</c> fills <c>OpenedOn</c> (see <see cref="RowReader{T}"/>).</summary>
    /// <typeparam name="T">A record, or a plain value for a query of one column.</typeparam>
    /// <param name="path">Path under <c>Sql/</c>.</param>
    /// <param name="parameters">Named parameters.</param>
    /// <exception cref="InvalidOperationException">A column is missing, of another type, or null where the record does not allow it.</exception>
    public IReadOnlyList<T> Read<T>(string path, params ReadOnlySpan<(string Name, object? Value)> parameters) => Rows<T>(SqlText.Read(path), path, parameters);

    /// <summary>The one row of an embedded query that always gives one, its columns matched by name.</summary>
    /// <exception cref="InvalidOperationException">The query gave no row or several, or a column does not fit.</exception>
    public T Single<T>(string path, params ReadOnlySpan<(string Name, object? Value)> parameters) =>
        Read<T>(path, parameters) is [var only] ? only : throw new InvalidOperationException($"{path} must give one row.");

    /// <summary>Rows of a table or view in its own order, its columns matched by name.</summary>
    /// <exception cref="InvalidOperationException">A column is missing, of another type, or null where the record does not allow it.</exception>
    public IReadOnlyList<T> ReadTable<T>(string table) => Rows<T>($"from {Quote(table)}", table, []);

    /// <summary>Hands over the rows of one embedded query while the engine makes them: for results that may be as long as the data.</summary>
    public void Stream<T>(string path, Action<IEnumerable<T>> use) => Stream(path, reader => use(Rows<T>(reader, path)));

    /// <summary>Rows of one embedded query, each turned into a record as it streams by.</summary>
    public IReadOnlyList<T> Read<T>(string path, Func<DbDataReader, T> row, params ReadOnlySpan<(string Name, object? Value)> parameters) =>
        Query(SqlText.Read(path), row, parameters);

    /// <summary>Rows of a query whose text the caller has (see <see cref="SqlText.Fill"/>), its columns matched by name.</summary>
    public IReadOnlyList<T> Query<T>(string sql) => Rows<T>(sql, sql, []);

    /// <summary>Rows of a query whose text the caller has.</summary>
    public IReadOnlyList<T> Query<T>(string sql, Func<DbDataReader, T> row, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        using DbCommand command = Command(sql, parameters);
        using DbDataReader reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
        {
            rows.Add(row(reader));
        }

        return rows;
    }

    /// <summary>Hands over the rows of one embedded query while the engine makes them: for results that may be as long as the data.</summary>
    public void Stream(string path, Action<DbDataReader> use)
    {
        using DuckDBCommand command = _connection.CreateCommand();
        command.CommandText = SqlText.Read(path);
        command.UseStreamingMode = true;
        using DbDataReader reader = command.ExecuteReader();
        use(reader);
    }

    /// <summary>True when a table or view of that name exists in this session.</summary>
    public bool Has(string table) =>
        Single<long>("queries/session/has_table.sql", ("name", table)) > 0;

    /// <summary>Number of rows of a table or view.</summary>
    public long Count(string table) => Rows<long>(SqlText.Fill("statements/row_count.sql", ("table", Quote(table))), table, [])[0];

    /// <summary>An identifier in double quotes.</summary>
    public static string Quote(string identifier) => "\"" + identifier.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    /// <summary>A text literal in single quotes, for places where no parameter is allowed (file paths in COPY and read_parquet).</summary>
    public static string Literal(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";

    /// <inheritdoc/>
    public void Dispose() => _connection.Dispose();

    private List<T> Rows<T>(string sql, string source, ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        using DbCommand command = Command(sql, parameters);
        using DbDataReader reader = command.ExecuteReader();
        return [.. Rows<T>(reader, source)];
    }

    private static IEnumerable<T> Rows<T>(DbDataReader reader, string source)
    {
        var rows = new RowReader<T>(reader, source);
        while (reader.Read())
        {
            yield return rows.Current();
        }
    }

    private DbCommand Command(string sql, ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        DuckDBCommand command = _connection.CreateCommand();
        command.CommandText = sql;
        foreach ((string name, object? value) in parameters)
        {
            command.Parameters.Add(new DuckDBParameter(name, value ?? DBNull.Value));
        }

        return command;
    }
}

/// <summary>Limits of one DuckDB session.</summary>
public sealed record DatabaseOptions
{
    /// <summary>Memory DuckDB may use before it spills, in its own notation. Default 512MB.</summary>
    public string MemoryLimit { get; init; } = "512MB";

    /// <summary>Worker threads, 1 or more. Default: the processors there are.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>File that holds the session's tables, so that they need not stand in memory, or null if they do.</summary>
    public string? File { get; init; }

    /// <summary>True where nobody opens the file after the session, so that closing need not complete it.</summary>
    public bool FileIsTemporary { get; init; }

    /// <summary>
    /// True for a session of some thousand rows, where planning a query takes longer than running it: what large sessions
    /// keep as a view, so that it need not stand in memory, is made a table, and queries are hardly optimized. Changes no result.
    /// </summary>
    public bool HoldsLittle { get; init; }

    /// <summary>The only folders whose files the session may read and write, besides the one for spilling, or null for any.</summary>
    public IReadOnlyList<string>? Folders { get; init; }

    /// <summary>Folder for spilling, or null if there is none.</summary>
    public string? SpillFolder { get; init; }
}
