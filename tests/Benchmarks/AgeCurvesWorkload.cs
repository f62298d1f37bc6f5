using System.Globalization;
using PartsSignal.Analysis.AgeCurves.Tables;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Store;

namespace PartsSignal.Benchmarks;

/// <summary>
/// Age curves of 50 components over a register: counting in SQL, survival curve, cumulative hazard and Weibull fit with
/// profile intervals for each; the size is the number of appliances.
/// </summary>
public sealed class AgeCurvesWorkload : IWorkload, IDisposable
{
    private const int Components = 50;
    private readonly Database _database = Database.Open(new DatabaseOptions { MemoryLimit = "2GB" });

    /// <inheritdoc/>
    public string Name => "age-curves";

    /// <inheritdoc/>
    public int DefaultSize => 1_000_000;

    /// <inheritdoc/>
    public string Unit => "appliances";

    /// <inheritdoc/>
    public void Prepare(int size)
    {
        foreach (string table in StoreTables.Names)
        {
            _database.Execute($"drop table if exists {Database.Quote(table)}");
            StoreTables.CreateEmpty(_database, table);
        }

        _database.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "age-curves-units.sql")), ("units", size), ("components", Components));
    }

    /// <inheritdoc/>
    public string Run()
    {
        ResultRunner.Build(_database, ResultSteps.Curves, TimeProvider.System, ("as_of", null), ("callback_days", 30));
        AgeCurveTables curves = AgeCurveTables.Of(_database);
        AgeCurveSummary[] whole = [.. curves.Summaries.Where(s => s is { Basis: CurveBasis.Register, ModelFamily: CurveKey.AllFamilies })];
        return string.Create(CultureInfo.InvariantCulture,
            $"{whole.Length} curves, {whole.Sum(s => s.Failures):N0} failures, shapes {whole.Min(s => s.Shape):0.000} to {whole.Max(s => s.Shape):0.000} (true 0.8 to 3.0)");
    }

    /// <inheritdoc/>
    public void Dispose() => _database.Dispose();
}
