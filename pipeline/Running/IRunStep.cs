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
