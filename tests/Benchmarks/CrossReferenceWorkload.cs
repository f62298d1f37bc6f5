using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Transform;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Benchmarks;

/// <summary>
/// The whole transform over a catalog of the given size, with three supersession arrows for ten numbers and a job
/// line for every tenth, under the load's own memory limit.
/// </summary>
public sealed class CrossReferenceWorkload : IWorkload, IDisposable
{
    private string? _spill;
    private Database? _database;

    /// <inheritdoc/>
    public string Name => "cross-reference";

    /// <inheritdoc/>
    public int DefaultSize => 1_000_000;

    /// <inheritdoc/>
    public string Unit => "part numbers";

    /// <inheritdoc/>
    public void Prepare(int size)
    {
        Dispose();
        _spill = Directory.CreateTempSubdirectory("partssignal-spill-").FullName;
        _database = Database.Open(new DatabaseOptions { SpillFolder = _spill });
        StagedViews.Attach(_database, []);
        _database.Run("staging/review_answers.sql");
        ResultTable.Write(_database, "component_roles", [new ComponentRole("component_0", "main")]);
        _database.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "cross-reference-rows.sql")), ("parts", size));
        PartNames.Attach(_database, WordSets.Load(null).Components);
        OwnComplaints.Attach(_database);
        ResultTable.Write(_database, "learned_date_codes", Array.Empty<DateCodeRule>());
    }

    /// <inheritdoc/>
    public string Run()
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        IReadOnlyList<ResultLog> steps = TransformRunner.Run(_database!, new TransformOptions(), TimeProvider.System);
        Reconciliation.Read(_database!).RequireBalance();
        ResultLog chains = steps.Single(s => s.Table == "int_current_numbers");
        double cpu = (Environment.CpuUsage.TotalTime - before).TotalSeconds;
        long lines = _database!.Count("job_parts");
        long resolved = _database.Query("from job_parts select count(part_number)", r => r.GetInt64(0))[0];
        Dispose();
        return string.Create(CultureInfo.InvariantCulture,
            $"{chains.Rows:N0} old numbers followed in {chains.Seconds:0.0} s; {resolved:N0} of {lines:N0} lines resolved; {cpu:0.0} s of processor time; slowest {string.Join(", ", steps.OrderByDescending(s => s.Seconds).Take(8).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Table} {s.Seconds:0.0} s")))}");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _database?.Dispose();
        _database = null;
        if (_spill is not null && Directory.Exists(_spill))
        {
            Directory.Delete(_spill, recursive: true);
        }
    }
}
