namespace PartsSignal.Pipeline.Staging;

/// <summary>Takes the rows of one table to the staged tables or to the rejects.</summary>
internal interface IRowLoop
{
    /// <summary>Reads to the end.</summary>
    Task RunAsync(CancellationToken cancellation);
}
