using System.Data.Common;
using System.Globalization;

namespace PartsSignal.Analysis.Sql;

/// <summary>Builds result tables one after the other and lets each pass its checks before the next.</summary>
public static class ResultRunner
{
    private const int RowsNamed = 5;

    /// <summary>
    /// Builds the tables in order, each as <c>create table NAME as</c> its query, then runs its checks.
    /// Values reach every query as session variables: <c>getvariable('as_of')</c>.
    /// </summary>
    /// <returns>Name, rows and seconds of each.</returns>
    /// <exception cref="InvalidDataException">A check found offending rows; the message names them.</exception>
    public static IReadOnlyList<ResultLog> Build(
        Database database, IEnumerable<ResultStep> steps, TimeProvider clock, params ReadOnlySpan<(string Name, object? Value)> variables)
    {
        foreach ((string name, object? value) in variables)
        {
            database.Execute($"set variable {Database.Quote(name)} = $value", ("value", value));
        }

        var log = new List<ResultLog>();
        foreach (ResultStep step in steps)
        {
            long start = clock.GetTimestamp();
            database.Execute($"create or replace table {Database.Quote(step.Table)} as {SqlText.Read(step.Sql)}");
            Check(database, step.Checks);
            log.Add(new ResultLog(step.Table, database.Count(step.Table), clock.GetElapsedTime(start).TotalSeconds));
        }

        return log;
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

    private static string Describe(DbDataReader row) => string.Join(", ", Enumerable.Range(0, row.FieldCount).Select(i =>
        $"{row.GetName(i)}={(row.IsDBNull(i) ? "null" : Convert.ToString(row.GetValue(i), CultureInfo.InvariantCulture))}"));
}
