using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Running;

/// <summary>What the steps of one run share.</summary>
internal sealed class RunContext : IDisposable
{
    private Database? _database;

    /// <summary>Starts a run.</summary>
    public RunContext(string input, OutputFolder output, ShopSettings settings, TimeProvider clock)
    {
        Input = input;
        Output = output;
        Settings = settings;
        Clock = clock;
    }

    /// <summary>Folder with the shop's files.</summary>
    public string Input { get; }

    /// <summary>Where everything goes.</summary>
    public OutputFolder Output { get; }

    /// <summary>What <c>shop.json</c> says.</summary>
    public ShopSettings Settings { get; }

    /// <summary>The clock; only for stamps, never for results.</summary>
    public TimeProvider Clock { get; }

    /// <summary>Sections of <c>run.json</c>: rows, files, prediction, van and whatever a step adds.</summary>
    public JsonObject Record { get; } = [];

    /// <summary>Names of the DuckDB tables to be written to the results folder, in order.</summary>
    public List<string> ResultTables { get; } = [];

    /// <summary>What earlier steps leave for later ones.</summary>
    public RunState State { get; } = new();

    /// <summary>A session over the current store; opened when first asked for, after the load step.</summary>
    public Database Database => _database ??= CurrentStore.OpenToWrite(Output);

    /// <summary>Puts records into a result table that is published when the run ends well.</summary>
    /// <param name="name">Name of the table.</param>
    /// <param name="rows">The records, in the order to keep.</param>
    /// <exception cref="InvalidDataException">Its checks, <c>Sql/results/FOLDER/NAME.checks.sql</c>, found offending rows.</exception>
    public void AddResult<T>(string name, IEnumerable<T> rows)
    {
        ResultTable.Write(Database, name, rows);
        ResultRunner.Check(Database, SqlText.PathOf($"{name}.checks.sql"));
        if (!ResultTables.Contains(name))
        {
            ResultTables.Add(name);
        }
    }

    /// <summary>
    /// Builds tables that SQL makes over the store, checks them, and publishes those that are results. Every query can
    /// read the session variables <c>as_of</c> (null: the newest call) and <c>callback_days</c>.
    /// </summary>
    /// <returns>Rows of all tables.</returns>
    public long BuildResults(IReadOnlyList<SqlModel> models)
    {
        IReadOnlyList<ResultLog> log = ResultRunner.Build(
            Database, models, Clock, ("as_of", Settings.AsOf), ("callback_days", Settings.CallbackDays));
        if (Record["tables"] is not JsonArray tables)
        {
            Record["tables"] = tables = [];
        }

        foreach (ResultLog line in log)
        {
            tables.Add(new JsonObject { ["table"] = line.Table, ["rows"] = line.Rows, ["seconds"] = Math.Round(line.Seconds, 3) });
        }

        ResultTables.AddRange(models.Where(m => m.Materialization == Materialization.Result && !ResultTables.Contains(m.Table)).Select(m => m.Table));
        return log.Sum(l => l.Rows);
    }

    /// <inheritdoc/>
    public void Dispose() => _database?.Dispose();
}

/// <summary>What one step of a run leaves for a later one; each value is null until its step has run.</summary>
internal sealed class RunState
{
    /// <summary>Result of the load step.</summary>
    public LoadReport? Load { get; set; }

    /// <summary>Result of the learning step; its model predicts what booked jobs will need.</summary>
    public LearningResult? Learned { get; set; }
}
