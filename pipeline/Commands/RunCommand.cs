using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Running;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>All steps, from the shop's files to its pages.</summary>
internal sealed class RunCommand : AsyncCommand<RunSettings>
{
    private readonly ProgramIo _io;

    /// <summary>Takes what the command may touch.</summary>
    public RunCommand(ProgramIo io) => _io = io;

    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, RunSettings settings, CancellationToken cancellation)
    {
        ShopSettings shop = ShopFile.Load(settings.Input, settings.Shop);
        var output = new OutputFolder(settings.Out);
        using OutputTransaction draft = await OutputTransaction.BeginAsync(output, _io.Clock, cancellation).ConfigureAwait(false);
        var progress = ProgressLine.For(_io);
        await _io.Out.WriteLineAsync(RejectFile.Notice(settings.Out)).ConfigureAwait(false);
        LoadReport? load;
        using (var run = new RunContext(settings.Input, draft.Folder, shop, _io.Clock))
        {
            await new RunPipeline(RunSteps.All(progress), _io.Out).RunAsync(run, cancellation).ConfigureAwait(false);
            load = run.State.Load;
        }

        draft.Commit();
        await _io.Out.WriteLineAsync($"Report: {Path.GetFullPath(output.NewestReport() ?? output.Reports)}").ConfigureAwait(false);
        return load is null ? ExitCode.Done : FileErrors.Tell(load, _io);
    }
}
