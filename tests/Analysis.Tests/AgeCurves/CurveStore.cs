using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.AgeCurves;

/// <summary>A small store with the tables the curves read, and its counts built.</summary>
internal static class CurveStore
{
    public static readonly DateOnly FirstDay = new(2020, 1, 1);
    public static readonly DateOnly LastDay = new(2024, 12, 31);

    /// <summary>Opens a session over the given rows and builds the counts.</summary>
    public static Database Open(IEnumerable<UnitRow> units, IEnumerable<JobRow> jobs, IEnumerable<JobPartRow>? parts = null, DateOnly? asOf = null, (string Old, string New, DateOnly Day)? supersession = null)
    {
        var database = Database.Open(new DatabaseOptions { Threads = 1 });
        foreach (string table in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, table);
        }

        ResultTable.Write(database, "units", units);
        ResultTable.Write(database, "jobs", jobs.Prepend(new JobRow("first", FirstDay)).Append(new JobRow("last", LastDay)));
        ResultTable.Write(database, "job_parts", parts ?? []);
        if (supersession is { } arrow)
        {
            database.Execute(
                "insert into supersessions values ($old, $new, $day, 'replaces', 1, 'supersessions.csv', 2)",
                ("old", arrow.Old), ("new", arrow.New), ("day", arrow.Day));
        }

        Build(database, asOf);
        return database;
    }

    /// <summary>Builds the counts over a session that has the store's tables.</summary>
    public static void Build(Database database, DateOnly? asOf = null) =>
        ResultRunner.Build(database, ResultModels.Curves, TimeProvider.System, ("as_of", asOf), ("callback_days", 30));

    /// <summary>A registered appliance built and installed on one day.</summary>
    public static UnitRow Registered(string id, DateOnly installed, DateOnly? removed = null) =>
        new(id) { MadeFrom = installed, MadeTo = installed, InstalledOn = installed, RemovedOn = removed, Registered = true };

    /// <summary>A call on an appliance for a component.</summary>
    public static JobRow Call(string id, string unit, DateOnly day, string component) =>
        new(id, day) { ClosedOn = day, UnitId = unit, MainComponent = component };
}
