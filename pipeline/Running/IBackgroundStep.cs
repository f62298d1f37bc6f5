namespace PartsSignal.Pipeline.Running;

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
