using System.Data.Common;
using System.Globalization;

namespace PartsSignal.Analysis.Sql;

/// <summary>Makes result tables in the order of what they read, and lets each pass its checks before the next.</summary>
public static class ResultRunner
{
    private const int RowsNamed = 5;

    /// <summary>
    /// Makes the given tables anew, and those they read that the session does not have yet, each followed by its checks.
    /// Values reach every query as session variables, <c>getvariable('as_of')</c>; they stay the same for a session.
    /// </summary>
    /// <returns>Name, rows and seconds of each.</returns>
    /// <exception cref="InvalidDataException">A check found offending rows; the message names them.</exception>
    public static IReadOnlyList<ResultLog> Build(
        Database database, IEnumerable<SqlModel> models, TimeProvider clock, params ReadOnlySpan<(string Name, object? Value)> variables)
    {
        foreach ((string name, object? value) in variables)
        {
            database.Execute($"set variable {Database.Quote(name)} = $value", ("value", value));
        }

        var log = new List<ResultLog>();
        foreach (SqlModel model in SqlModels.Order(models, database.Has))
        {
            long start = clock.GetTimestamp();
            Make(database, model);
            log.Add(new ResultLog(model.Table, database.Count(model.Table), clock.GetElapsedTime(start).TotalSeconds));
        }

        return log;
    }

    /// <summary>
    /// Makes shared tables that a query reads and the session does not have yet. Their checks are left to <see cref="Build"/>:
    /// every run passes them.
    /// </summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="asOf">Last day the data speaks for, or null for the newest call.</param>
    /// <param name="tables">Names of the tables.</param>
    public static void Prepare(Database database, DateOnly? asOf, params ReadOnlySpan<string> tables)
    {
        database.Execute("set variable as_of = $value", ("value", asOf));
        var wanted = new List<SqlModel>();
        foreach (string table in tables)
        {
            if (!database.Has(table))
            {
                wanted.Add(SqlModels.Find(table) ?? throw new ArgumentException($"No query makes a table '{table}'.", nameof(tables)));
            }
        }

        foreach (SqlModel model in SqlModels.Order(wanted, database.Has))
        {
            Create(database, model);
        }
    }

    /// <summary>Makes one table or view as its query says, then runs its checks.</summary>
    /// <exception cref="InvalidDataException">A check found offending rows.</exception>
    public static void Make(Database database, SqlModel model)
    {
        Create(database, model);
        CheckMade(database, model);
    }

    /// <summary>Runs the checks of a table, where it has any.</summary>
    /// <exception cref="InvalidDataException">A check found offending rows.</exception>
    public static void CheckMade(Database database, SqlModel model)
    {
        if (SqlText.Exists(model.Checks))
        {
            Check(database, model.Checks);
        }
    }

    /// <summary>Runs one file of checks; it returns offending rows, so no row is a pass.</summary>
    /// <param name="database">The session.</param>
    /// <param name="path">Path of the checks under <c>Sql/</c>.</param>
    /// <exception cref="InvalidDataException">There are offending rows; the message names up to five.</exception>
    public static void Check(Database database, string path)
    {
        IReadOnlyList<string> offending = database.Read(path, Describe);
        if (offending.Count > 0)
        {
            string shown = string.Join("; ", offending.Take(RowsNamed));
            string more = offending.Count > RowsNamed ? $" and {offending.Count - RowsNamed} more" : "";
            throw new InvalidDataException($"{path}: {offending.Count} offending rows: {shown}{more}");
        }
    }

    private static void Create(Database database, SqlModel model)
    {
        bool view = model.Materialization == Materialization.DaySpanView || (model.Materialization == Materialization.View && !database.HoldsLittle);
        string kind = view ? "view" : "table";
        database.Execute($"create or replace {kind} {Database.Quote(model.Table)} as {model.Text}");
    }

    private static string Describe(DbDataReader row) => string.Join(", ", Enumerable.Range(0, row.FieldCount).Select(i =>
        $"{row.GetName(i)}={(row.IsDBNull(i) ? "null" : Convert.ToString(row.GetValue(i), CultureInfo.InvariantCulture))}"));
}

/// <summary>What building one table took.</summary>
/// <param name="Table">Its name.</param>
/// <param name="Rows">Rows it has.</param>
/// <param name="Seconds">Seconds, checks included.</param>
public sealed record ResultLog(string Table, long Rows, double Seconds);

/// <summary>The result tables a run has published, and how a later session sees them.</summary>
public static class ResultFolder
{
    /// <summary>Makes every result visible as a view named as its file. A folder that is not there gives none.</summary>
    public static void Attach(Database database, string folder)
    {
        if (!Directory.Exists(folder))
        {
            return;
        }

        foreach (string file in Directory.EnumerateFiles(folder, "*.parquet").Order(StringComparer.Ordinal))
        {
            string name = Database.Quote(Path.GetFileNameWithoutExtension(file));
            database.Execute($"create or replace view {name} as from read_parquet({Database.Literal(file.Replace('\\', '/'))})");
        }
    }
}
