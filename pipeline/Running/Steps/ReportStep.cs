using PartsSignal.Pipeline.Reporting;

namespace PartsSignal.Pipeline.Running.Steps;

/// <summary>Writes the report of the last month that has ended, and the list of months. Runs after every result table is there.</summary>
public sealed class ReportStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "report";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        DateOnly asOf = ReportMaker.LastDay(context.Database, context.Settings) ?? DateOnly.FromDateTime(context.Clock.GetUtcNow().UtcDateTime);
        IReadOnlyList<string> pages = ReportMaker.Write(context.Database, context.Settings, context.Output, context.Output, [ReportMonths.Last(asOf)], asOf);
        context.Record["report"] = pages[0];
        return Task.FromResult((long)pages.Count);
    }
}
