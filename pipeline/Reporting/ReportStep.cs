using PartsSignal.Pipeline.Running;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Writes the report of the newest month that has ended and has calls, and the list of months. Runs after every result table is there.</summary>
internal sealed class ReportStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "report";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        DateOnly asOf = ReportMaker.LastDay(context.Database, context.Settings) ?? DateOnly.FromDateTime(context.Clock.GetUtcNow().UtcDateTime);
        DateOnly month = ReportMonths.NewestWithCalls(MonthIndex.Read(context.Database), asOf);
        IReadOnlyList<string> pages = ReportMaker.Write(context.Database, context.Settings, context.Output, context.Output, [month], asOf);
        context.Record["report"] = pages[0];
        return Task.FromResult((long)pages.Count);
    }
}
