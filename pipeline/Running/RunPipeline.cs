using System.Globalization;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Running;

/// <summary>Runs the steps in order, logs the rows and time of each, and writes the run record last.</summary>
internal sealed class RunPipeline
{
    // A step that allocated this much leaves more garbage than the collector gives back by itself.
    private const long ManyMegabytes = 200;
    private readonly IReadOnlyList<IRunStep> _steps;
    private readonly TextWriter _log;

    /// <summary>A pipeline over the given steps.</summary>
    /// <param name="steps">The steps, in order.</param>
    /// <param name="log">Receives one line per step.</param>
    public RunPipeline(IReadOnlyList<IRunStep> steps, TextWriter log) => (_steps, _log) = (steps, log);

    /// <summary>Runs all steps. If a step throws, the run stops and the previous record stays in place.</summary>
    public async Task RunAsync(RunContext context, CancellationToken cancellation)
    {
        var steps = new JsonArray();
        foreach (IRunStep step in _steps)
        {
            cancellation.ThrowIfCancellationRequested();
            var meter = new ResourceMeter(context.Clock);
            long rows = await step.RunAsync(context, cancellation).ConfigureAwait(false);
            ResourceUsage taken = meter.Next(step.Name);
            steps.Add(RunRecord.Line(taken, rows));
            if (taken.AllocatedMegabytes >= ManyMegabytes)
            {
                GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
            }

            await _log.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{step.Name,-10} {rows,12:N0} rows {taken.Seconds,8:0.0} s")).ConfigureAwait(false);
        }

        JsonObject record = RunRecord.Empty();
        RunRecord.Merge(record, context.Record);
        record["input"] = Path.GetFullPath(context.Input);
        record["steps"] = steps;
        record["peak_memory_mb"] = ResourceMeter.PeakMegabytes();
        RunRecord.Write(context.Output.RunRecord, record);
    }
}
