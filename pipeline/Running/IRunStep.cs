namespace PartsSignal.Pipeline.Running;

/// <summary>One step of <c>run</c>. Steps run in order and talk to each other only through the context.</summary>
internal interface IRunStep
{
    /// <summary>Name shown and logged, a plain verb or noun.</summary>
    string Name { get; }

    /// <summary>Does the step.</summary>
    /// <returns>Rows it handled, for the log.</returns>
    Task<long> RunAsync(RunContext context, CancellationToken cancellation);
}

/// <summary>
/// A step that needs nothing but the store for its long calculations: it begins them early, and they go on beside the
/// steps before it.
/// </summary>
internal interface IBackgroundStep : IRunStep
{
    /// <summary>Reads what the calculations need and begins them. They leave the session, the record and the folders alone.</summary>
    /// <returns>Rows read, for the log.</returns>
    long Begin(RunContext context);
}

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
