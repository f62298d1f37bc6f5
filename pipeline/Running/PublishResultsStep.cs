namespace PartsSignal.Pipeline.Running;

/// <summary>Writes every result table the steps before left, as Parquet and CSV.</summary>
internal sealed class PublishResultsStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "results";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation) =>
        Task.FromResult(ResultPublisher.Publish(context.Database, context.ResultTables, context.Output.Results));
}
