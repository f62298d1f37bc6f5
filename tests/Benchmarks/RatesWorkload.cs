using System.Globalization;
using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Benchmarks;

/// <summary>
/// All tables of the rates step over a register of 40 families and 50 components; the size is the number of appliances.
/// Half of the time and memory is the engine's: the queries alone are the figure to hold the estimators against.
/// </summary>
public sealed class RatesWorkload : IWorkload, IDisposable
{
    private const int Components = 50;
    private Database? _database;

    /// <inheritdoc/>
    public string Name => "rates";

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
        _database.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "rates-families.sql")));
    }

    /// <inheritdoc/>
    public string Run()
    {
        Database database = _database ?? throw new InvalidOperationException("Prepare comes first.");
        IReadOnlyList<ResultLog> log = ResultRunner.Build(
            database, ResultModels.Rates, TimeProvider.System, ("as_of", null), ("callback_days", 30), ("rate_from", null), ("rate_to", null));
        var options = new RateOptions();
        RateCounts counts = RateCounts.Read(database);
        int rates = FailureRateTable.Create(counts, options).Count + PartServiceRates.Table(database, options).Count;
        int months = MonthlyRate.Table(counts, options).Count;
        int compared = FamilyComparison.Table(counts, options, new EffectGate()).Count + FamilyMix.Table(counts, options).Count;
        return string.Create(CultureInfo.InvariantCulture,
            $"{database.Count("jobs"):N0} jobs, {rates:N0} rates, {months:N0} by month, {compared:N0} compared; SQL alone {log.Sum(l => l.Seconds):0.0} s");
    }

    /// <inheritdoc/>
    public void Dispose() => _database?.Dispose();
}
