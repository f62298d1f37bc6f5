using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Transforms staged rows into the tables of the store, in one session.</summary>
internal static class TransformRunner
{
    /// <summary>Builds every table in order; a store table is checked as soon as it is built.</summary>
    /// <param name="database">A session with the staged tables and the owner's answers attached.</param>
    /// <param name="options">The assumptions.</param>
    /// <param name="clock">Times the steps.</param>
    /// <param name="done">Called after each table.</param>
    /// <param name="cancellation">Checked between tables.</param>
    /// <returns>Name, rows and seconds of each table.</returns>
    /// <exception cref="InvalidDataException">A check found offending rows.</exception>
    public static IReadOnlyList<ResultLog> Run(
        Database database, TransformOptions options, TimeProvider clock, Action<ResultLog>? done = null, CancellationToken cancellation = default)
    {
        database.Run("macros/compact_key.sql");
        database.Run("macros/row_marks.sql");
        Set(database, "as_of", options.AsOf);
        ResultTable.Write(database, "van_crews", options.Vans.SelectMany(v => v.Technicians.Count == 0 ? [new VanCrew(v.Van, null)] : v.Technicians.Select(t => new VanCrew(v.Van, t))));
        Set(database, "job_key", options.JobKey);
        Set(database, "oldest_years", options.OldestYears);
        Set(database, "family_min_models", options.FamilyMinModels);
        var log = new List<ResultLog>();
        var made = new HashSet<string>(StringComparer.Ordinal);
        // Which supersession arrows count as known depends on the as-of day, so it is built first.
        Run([SqlModels.Find("int_as_of")!]);
        Set(database, "arrows_as_of", database.ReadTable<DateOnly?>("int_as_of")[0]);
        Run(SqlModels.In("marts"));
        return log;

        void Run(IReadOnlyList<SqlModel> wanted)
        {
            // Everything is made once, even where it is there: the session may have been loaded before.
            foreach (SqlModel model in SqlModels.Order(wanted, made.Contains))
            {
                made.Add(model.Table);
                cancellation.ThrowIfCancellationRequested();
                long start = clock.GetTimestamp();
                MemoryRetry.Run(database, MemoryRetry.Rungs, () => Make(database, model, options));
                if (model.IsView)
                {
                    continue;
                }

                var line = new ResultLog(model.Table, database.Count(model.Table), clock.GetElapsedTime(start).TotalSeconds);
                log.Add(line);
                done?.Invoke(line);
            }
        }
    }

    private static void Make(Database database, SqlModel model, TransformOptions options)
    {
        if (!model.IsStored)
        {
            ResultRunner.Make(database, model);
            return;
        }

        string table = Database.Quote(model.Table);
        bool bySpan = model.Materialization == Materialization.ByDaySpan;
        database.Execute($"drop table if exists {table}");
        StoreTables.CreateEmpty(database, model.Table);
        foreach ((DateOnly first, DateOnly last) in bySpan ? Spans(database, options.SpanJobs) : [new DaySpan(default, default)])
        {
            if (bySpan)
            {
                Set(database, "first_day", first);
                Set(database, "last_day", last);
            }

            database.Execute($"insert into {table} by name {model.Text}");
        }

        ResultRunner.CheckMade(database, model);
    }

    private static IReadOnlyList<DaySpan> Spans(Database database, long jobs) =>
        database.Read<DaySpan>("queries/session/job_spans.sql", ("jobs", jobs));

    private static void Set(Database database, string name, object? value) =>
        database.Execute($"set variable {Database.Quote(name)} = $value", ("value", value));

    private sealed record VanCrew(string Van, string? Technician);

    private sealed record DaySpan([Column("first_day")] DateOnly First, [Column("last_day")] DateOnly Last);
}
