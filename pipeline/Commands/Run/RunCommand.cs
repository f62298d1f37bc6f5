using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Running;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands.Run;

/// <summary>All steps, from the shop's files to its pages.</summary>
public sealed class RunCommand : AsyncCommand<RunSettings>
{
    private readonly ProgramIo _io;

    /// <summary>Takes what the command may touch.</summary>
    public RunCommand(ProgramIo io) => _io = io;

    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, RunSettings settings, CancellationToken cancellation)
    {
        ShopSettings shop = ShopFile.Load(settings.Input, settings.Shop);
        var output = new OutputFolder(settings.Out);
        using OutputDraft draft = await OutputDraft.BeginAsync(output, _io.Clock, cancellation).ConfigureAwait(false);
        using (var run = new RunContext(settings.Input, draft.Folder, shop, _io.Clock))
        {
            await new RunPipeline(RunSteps.All(), _io.Out).RunAsync(run, cancellation).ConfigureAwait(false);
        }

        draft.Commit();
        await _io.Out.WriteLineAsync($"Report: {Path.GetFullPath(output.NewestReport() ?? output.Reports)}").ConfigureAwait(false);
        return ExitCode.Done;
    }
}
