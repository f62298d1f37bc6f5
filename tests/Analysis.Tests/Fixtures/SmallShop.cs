using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>A store made of a few rows.</summary>
internal sealed class SmallShop
{
    public List<JobRow> Jobs { get; init; } = [];

    public List<UnitRow> Units { get; init; } = [];

    public List<JobPartRow> Parts { get; init; } = [];

    public List<PartOrderRow> Orders { get; init; } = [];

    /// <summary>A session over these rows; every other table is empty.</summary>
    public Database Open()
    {
        var database = Database.Open(new DatabaseOptions { Threads = 1 });
        foreach (string table in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, table);
        }

        ResultTable.Write(database, "jobs", Jobs);
        ResultTable.Write(database, "units", Units);
        ResultTable.Write(database, "job_parts", Parts);
        ResultTable.Write(database, "part_orders", Orders);
        return database;
    }

    /// <summary>A session in which the given result tables are built and have passed their checks.</summary>
    public Database Build(IReadOnlyList<SqlModel> steps, DateOnly? asOf = null)
    {
        Database database = Open();
        ResultRunner.Build(
            database, steps, TimeProvider.System, ("as_of", asOf), ("callback_days", 30), ("rate_from", null), ("rate_to", null));
        return database;
    }
}
