using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Running;

/// <summary>State shared by the steps of one run.</summary>
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

    /// <summary>Folder for all output.</summary>
    public OutputFolder Output { get; }

    /// <summary>What <c>shop.json</c> says.</summary>
    public ShopSettings Settings { get; }

    /// <summary>The clock; used for timestamps and timings, never in results.</summary>
    public TimeProvider Clock { get; }

    /// <summary>Sections of <c>run.json</c>; each step adds its own.</summary>
    public JsonObject Record { get; } = [];

    /// <summary>Names of the DuckDB tables to write to the results folder, in order.</summary>
    public List<string> ResultTables { get; } = [];

    /// <summary>Values that earlier steps pass to later ones.</summary>
    public RunState State { get; } = new();

    /// <summary>A session over the current store, opened on first use, after the load step.</summary>
    public Database Database => _database ??= CurrentStore.OpenToWrite(Output);

    /// <summary>Adds a result table; it is published when the run succeeds.</summary>
    /// <param name="name">Name of the table.</param>
    /// <param name="rows">The records, in table order.</param>
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
    /// Builds and checks SQL models over the store, and adds the results among them. Every query can read the session
    /// variables <c>as_of</c> (null means the newest call) and <c>callback_days</c>.
    /// </summary>
    /// <returns>Total rows of all tables.</returns>
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

/// <summary>Values passed from one step of a run to later ones; each is null until its step has run.</summary>
internal sealed class RunState
{
    /// <summary>Result of the load step.</summary>
    public LoadReport? Load { get; set; }

    /// <summary>Result of the learning step; its model predicts what booked jobs will need.</summary>
    public LearningResult? Learned { get; set; }

    /// <summary>What to fill in first in the data; stays null where nothing single would bring a job back.</summary>
    public string? FillInFirst { get; set; }
}
