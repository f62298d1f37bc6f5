using System.Globalization;
using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Benchmarks;

/// <summary>
/// Age curves of 50 components over a register: counting in SQL, survival curve, cumulative hazard and Weibull fit with
/// profile intervals for each; the size is the number of appliances.
/// </summary>
public sealed class AgeCurvesWorkload : IWorkload, IDisposable
{
    private const int Components = 50;
    private Database? _database;

    /// <inheritdoc/>
    public string Name => "age-curves";

    /// <inheritdoc/>
    public int DefaultSize => 1_000_000;

    /// <inheritdoc/>
    public string Unit => "appliances";

    /// <inheritdoc/>
    public void Prepare(int size)
    {
        _database?.Dispose();
        _database = Database.Open(new DatabaseOptions { MemoryLimit = "2GB", SpillFolder = Path.GetTempPath() });
        foreach (string table in StoreTables.Names)
        {
            StoreTables.CreateEmpty(_database, table);
        }

        _database.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "age-curves-units.sql")), ("units", size), ("components", Components));
    }

    /// <inheritdoc/>
    public string Run()
    {
        Database database = _database ?? throw new InvalidOperationException("Prepare comes first.");
        ResultRunner.Build(database, ResultModels.Curves, TimeProvider.System, ("as_of", null), ("callback_days", 30));
        AgeCurveTables curves = AgeCurveTables.Create(database);
        AgeCurveSummary[] whole = [.. curves.Summaries.Where(s => s is { Basis: CurveBasis.Register, ModelFamily: CurveKey.AllFamilies })];
        return string.Create(CultureInfo.InvariantCulture,
            $"{whole.Length} curves, {whole.Sum(s => s.Failures):N0} failures, shapes {whole.Min(s => s.Shape):0.000} to {whole.Max(s => s.Shape):0.000} (true 0.8 to 3.0)");
    }

    /// <inheritdoc/>
    public void Dispose() => _database?.Dispose();
}
