using PartsSignal.Analysis.Callbacks;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Running;

public sealed class FailingCheckTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-check-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public async Task Run_TableWithAnOffendingRow_FailsNamesItAndPublishesNothing()
    {
        var output = new OutputFolder(_root);
        using var context = new RunContext(_root, output, new ShopSettings(), TimeProvider.System);
        var pipeline = new RunPipeline([new TooManyCallbacks(), new PublishResultsStep()], TextWriter.Null);
        var fault = await Assert.ThrowsAsync<InvalidDataException>(() => pipeline.RunAsync(context, TestContext.Current.CancellationToken));
        Assert.Contains("callback_shares.checks.sql: 1 offending rows", fault.Message, StringComparison.Ordinal);
        Assert.Contains("member=T7", fault.Message, StringComparison.Ordinal);
        Assert.Empty(context.ResultTables);
        Assert.False(Directory.Exists(output.Results));
        Assert.False(File.Exists(output.RunRecord));
    }

    private sealed class TooManyCallbacks : IRunStep
    {
        public string Name => "callbacks";

        public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
        {
            CallbackShare[] rows = [new(30, "technician", "T7", 20, 30, 1.5, 1, 2, 30, 0, null, null, null, null, false)];
            context.AddResult("callback_shares", rows);
            return Task.FromResult(1L);
        }
    }
}
