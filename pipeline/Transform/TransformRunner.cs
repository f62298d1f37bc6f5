using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Turns staged rows into the tables of the store, in one session.</summary>
internal static class TransformRunner
{
    /// <summary>Makes every table in order; those of the store pass their checks at once.</summary>
    /// <param name="database">A session in which the staged tables and the owner's answers are attached.</param>
    /// <param name="options">What is assumed.</param>
    /// <param name="clock">Times the steps.</param>
    /// <param name="done">Told of each step as it ends.</param>
    /// <param name="cancellation">Stops between two steps.</param>
    /// <returns>Name, rows and seconds of each step.</returns>
    /// <exception cref="InvalidDataException">A check found offending rows.</exception>
    public static IReadOnlyList<ResultLog> Run(
        Database database, TransformOptions options, TimeProvider clock, Action<ResultLog>? done = null, CancellationToken cancellation = default)
    {
        database.Run("macros/compact_key.sql");
        Set(database, "as_of", options.AsOf);
        Set(database, "oldest_years", options.OldestYears);
        Set(database, "family_min_models", options.FamilyMinModels);
        var log = new List<ResultLog>();
        // The day that the data speaks for decides which supersession arrows are known, so it comes first.
        Run([SqlModels.Find("int_as_of")!]);
        Set(database, "arrows_as_of", database.ReadTable<DateOnly?>("int_as_of")[0]);
        Run(SqlModels.In("marts"));
        return log;

        void Run(IReadOnlyList<SqlModel> wanted)
        {
            // Nothing made before counts: a session may be loaded again.
            foreach (SqlModel model in SqlModels.Order(wanted, _ => false))
            {
                cancellation.ThrowIfCancellationRequested();
                long start = clock.GetTimestamp();
                MemoryRetry.Run(database, MemoryRetry.Rungs, () => Make(database, model, options));
                if (model.Materialization == Materialization.View)
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

    private sealed record DaySpan([Column("first_day")] DateOnly First, [Column("last_day")] DateOnly Last);
}
