using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Running;

/// <summary>Writes every result table of the earlier steps as Parquet and CSV.</summary>
internal sealed class PublishResultsStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "results";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation) =>
        Task.FromResult(ResultPublisher.Publish(context.Database, context.ResultTables, context.Output.Results));
}

/// <summary>Writes result tables to the results folder as Parquet and CSV, in table order.</summary>
internal static class ResultPublisher
{
    /// <summary>Writes the tables.</summary>
    /// <param name="database">A single-threaded session, which preserves row order.</param>
    /// <param name="tables">Names of the tables.</param>
    /// <param name="folder">Folder to write to.</param>
    /// <returns>Rows written.</returns>
    /// <exception cref="InvalidDataException">A table holds NaN or infinity.</exception>
    public static long Publish(Database database, IEnumerable<string> tables, string folder)
    {
        database.Run("macros/spreadsheet_text.sql");
        Directory.CreateDirectory(folder);
        long rows = 0;
        foreach (string table in tables)
        {
            IReadOnlyList<TableColumn> columns = database.Read<TableColumn>("queries/session/columns.sql", ("name", table));
            RequireFinite(database, table, columns);
            string quoted = Database.Quote(table);
            string target = Path.Combine(folder, table);
            database.Execute($"copy (from {quoted}) to {Database.Literal(target + ".parquet")} (format parquet, compression zstd)");
            database.Execute($"copy ({SqlText.Fill("statements/chosen_columns.sql", ("table", quoted), ("columns", Spreadsheet(columns)))}) to {Database.Literal(target + ".csv")} (format csv, header true)");
            rows += database.Count(table);
        }

        return rows;
    }

    private static string Spreadsheet(IReadOnlyList<TableColumn> columns) => string.Join(", ", columns.Select(c =>
    {
        string name = Database.Quote(c.Name);
        return c.Type == "VARCHAR" ? $"spreadsheet_text({name}) as {name}" : name;
    }));

    private static void RequireFinite(Database database, string table, IReadOnlyList<TableColumn> columns)
    {
        foreach ((string name, _) in columns.Where(c => c.Type is "DOUBLE" or "FLOAT"))
        {
            string column = Database.Quote(name);
            long bad = database.Query<long>(SqlText.Fill("statements/not_finite.sql", ("table", Database.Quote(table)), ("column", column)))[0];
            if (bad > 0)
            {
                throw new InvalidDataException($"Result table {table}: {bad} rows of {name} hold NaN or infinity.");
            }
        }
    }

    private sealed record TableColumn([Column("column_name")] string Name, [Column("data_type")] string Type);
}
