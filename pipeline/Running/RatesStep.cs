using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Pipeline.Running;

/// <summary>Failure rates by component, complaint, family, brand, age and supplier; over all time and by month.</summary>
internal sealed class RatesStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "rates";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Rates);
        var options = new RateOptions();
        RateCounts counts = RateCounts.Read(context.Database);
        IReadOnlyList<FailureRate> rates = [.. FailureRateTable.Create(counts, options), .. PartServiceRates.Table(context.Database, options)];
        cancellation.ThrowIfCancellationRequested();
        context.AddResult("failure_rates", rates);
        context.AddResult("failure_rates_by_month", MonthlyRate.Table(counts, options));
        context.AddResult("family_comparison", FamilyComparison.Table(counts, options, new EffectGate()));
        context.AddResult("family_mix", FamilyMix.Table(counts, options));
        context.AddResult("unit_population", UnitPopulation.Table(context.Database));
        return Task.FromResult((long)rates.Count);
    }
}
