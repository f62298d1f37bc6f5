namespace PartsSignal.Pipeline.Running;

/// <summary>One step of <c>run</c>. Steps run in order and share data only through the context.</summary>
internal interface IRunStep
{
    /// <summary>Name shown and logged.</summary>
    string Name { get; }

    /// <summary>Runs the step.</summary>
    /// <returns>Rows it handled, for the log.</returns>
    Task<long> RunAsync(RunContext context, CancellationToken cancellation);
}

/// <summary>
/// A step whose long calculations need only the store. They start early on a background thread and run while earlier
/// steps do their work.
/// </summary>
internal interface IBackgroundStep : IRunStep
{
    /// <summary>Reads the inputs and starts the calculations, which must not touch the session, the record or the folders.</summary>
    /// <returns>Rows read, for the log.</returns>
    long Begin(RunContext context);
}

/// <summary>Starts the long calculations of later steps. Runs as soon as the store exists.</summary>
/// <param name="later">The steps to start, longest first.</param>
internal sealed class StartBackgroundStep(params IReadOnlyList<IBackgroundStep> later) : IRunStep
{
    /// <inheritdoc/>
    public string Name => "begin";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation) =>
        Task.FromResult(later.Sum(step => step.Begin(context)));
}
