using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.BadBatches;
using PartsSignal.Analysis.Callbacks;
using PartsSignal.Analysis.Months;
using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Suppliers;
using PartsSignal.Analysis.Trends;

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

/// <summary>Callbacks, and replaced parts that failed again.</summary>
internal sealed class CallbacksStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "callbacks";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Callbacks);
        IReadOnlyList<CallbackShare> shares = CallbackShare.Table(context.Database);
        IReadOnlyList<RepeatFailure> repeats = RepeatFailure.Table(context.Database);
        context.AddResult("callback_shares", shares);
        context.AddResult("repeat_failures", repeats);
        return Task.FromResult((long)shares.Count + repeats.Count);
    }
}

/// <summary>Supplier quality and lead times; runs after the callbacks, whose followed parts it counts.</summary>
internal sealed class SuppliersStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "suppliers";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Suppliers);
        IReadOnlyList<SupplierPart> parts = SupplierQualityTable.Create(SupplierCount.Read(context.Database), new EffectGate());
        IReadOnlyList<LeadTime> times = LeadTime.Table(context.Database);
        context.AddResult("supplier_quality", parts);
        context.AddResult("lead_times", times);
        return Task.FromResult((long)parts.Count + times.Count);
    }
}

/// <summary>Age at failure by component and family, repairs per appliance, repeat failures, and the failure risk of the next 12 months.</summary>
internal sealed class CurvesStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "age curves";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Curves);
        AgeCurveTables curves = AgeCurveTables.Create(context.Database);
        cancellation.ThrowIfCancellationRequested();
        context.AddResult("age_curve_summary", curves.Summaries);
        context.AddResult("age_curve_points", curves.Points);
        context.AddResult("component_incidence", ComponentIncidence.Table(context.Database));
        context.AddResult("repairs_per_unit", RepairsPerUnit.Table(context.Database));
        context.AddResult("replaced_part_curve", ReplacedPartPoint.Table(context.Database));
        context.AddResult("next_year_risk", NextYearRiskTable.Create(context.Database));
        return Task.FromResult((long)curves.Summaries.Count);
    }
}

/// <summary>What rises: every month of every series, held against its baseline as it could be told at that month's end.</summary>
internal sealed class TrendsStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "trends";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Trends);
        TrendTables trends = TrendTables.Create(context.Database);
        cancellation.ThrowIfCancellationRequested();
        context.AddResult("trend_alarms", trends.Alarms);
        context.AddResult("trend_alarm_jobs", trends.AlarmJobs);
        context.AddResult("trend_scans", trends.Scans);
        context.AddResult("trend_tests", trends.Tests);
        context.AddResult("trend_months", trends.Months);
        context.AddResult("reporting_delay", trends.Delays);
        return Task.FromResult((long)trends.Scans.Sum(s => s.SeriesTested));
    }
}

/// <summary>Build months whose units need a component more often than the family's others: bad batches.</summary>
internal sealed class BadBatchesStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "bad batches";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.BadBatches);
        BadBatchTables batches = BadBatchTables.Create(context.Database);
        cancellation.ThrowIfCancellationRequested();
        context.AddResult("bad_batches", batches.Batches);
        context.AddResult("bad_batch_jobs", batches.Jobs);
        context.AddResult("bad_batch_tests", batches.Tests);
        return Task.FromResult((long)batches.Tests.Count);
    }
}

/// <summary>Monthly call figures, the opening section of the monthly report.</summary>
internal sealed class MonthsStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "months";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultModels.Months);
        IReadOnlyList<MonthFigure> months = MonthFigure.Table(context.Database);
        context.AddResult("month_figures", months);
        context.AddResult("month_needs", MonthNeed.Table(context.Database));
        context.AddResult("month_families", MonthFamily.Table(context.Database));
        return Task.FromResult((long)months.Count);
    }
}
