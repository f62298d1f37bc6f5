namespace PartsSignal.Pipeline.Running;

/// <summary>Begins the long calculations of later steps. Runs once the store is there.</summary>
/// <param name="later">The steps that begin here, the longest first.</param>
internal sealed class StartBackgroundStep(params IReadOnlyList<IBackgroundStep> later) : IRunStep
{
    /// <inheritdoc/>
    public string Name => "begin";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation) =>
        Task.FromResult(later.Sum(step => step.Begin(context)));
}
