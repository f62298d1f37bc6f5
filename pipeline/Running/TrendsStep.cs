using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Pipeline.Running;

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
