using PartsSignal.Analysis.Callbacks;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Running;

/// <summary>What came back: callbacks, and replaced parts that failed again.</summary>
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
