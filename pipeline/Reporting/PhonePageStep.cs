using System.Text;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Running;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Writes the phone page, and keeps for <c>lookup</c> what it knows of parts and models. Runs after the predictor was learned; a run without one writes none.</summary>
internal sealed class PhonePageStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "phone page";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        if (!File.Exists(ModelStore.PathOf(context.Output)) || ReportMaker.LastDay(context.Database, context.Settings) is not { } asOf)
        {
            return Task.FromResult(0L);
        }

        LookupStore.Keep(context.Database, context.Output);
        LookupData data = PhonePageMaker.Create(context.Database, ModelStore.Read(context.Output), context.Settings, context.Input, asOf);
        File.WriteAllText(context.Output.LookupPage, LookupPage.Render(data), new UTF8Encoding(false));
        return Task.FromResult((long)data.Models.Count);
    }
}
