using System.ComponentModel;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Understanding;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>run</c>.</summary>
internal sealed class RunSettings : CommandSettings
{
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    [CommandOption("--shop <FILE>")]
    [Description("A shop.json outside the input folder")]
    public string? Shop { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder for everything that is written")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}

/// <summary>Runs all steps, from the shop's files to the pages.</summary>
internal sealed class RunCommand : AsyncCommand<RunSettings>
{
    private readonly ProgramIo _io;

    /// <summary>Takes what the command may touch.</summary>
    public RunCommand(ProgramIo io) => _io = io;

    public override async Task<int> ExecuteAsync(CommandContext context, RunSettings settings, CancellationToken cancellation)
    {
        (ShopSettings shop, string? assumed) = ProposedMaps.Complete(settings.Input, ShopFile.Load(settings.Input, settings.Shop), cancellation);
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
        foreach (StagedFile file in load?.Staged ?? [])
        {
            UnknownCells.Tell(file, _io);
        }

        await _io.Out.WriteLineAsync($"Report: {Path.GetFullPath(output.NewestReport() ?? output.Reports)}").ConfigureAwait(false);
        int code = load is null ? ExitCode.Done : FileErrors.Tell(load, _io, assumed, _io.Out);
        if (RunOutcome.Lacks(output.Results) is { } lacking)
        {
            await _io.Error.WriteLineAsync(lacking).ConfigureAwait(false);
            return ExitCode.BadInput;
        }

        return code;
    }
}

/// <summary>The steps of <c>run</c>, in order.</summary>
internal static class RunSteps
{
    /// <summary>All of them.</summary>
    /// <param name="progress">Receives progress while reading, or null for no progress.</param>
    public static IReadOnlyList<IRunStep> All(ProgressLine? progress = null)
    {
        var learn = new LearnStep();
        var plan = new PlanStep();
        return
        [
            new LoadStep(progress),
            new StartBackgroundStep(learn, plan),
            new MonthsStep(),
            new RatesStep(),
            new CallbacksStep(),
            new SuppliersStep(),
            new CurvesStep(),
            new TrendsStep(),
            learn,
            plan,
            new PublishResultsStep(),
            new ReportStep(),
            new PhonePageStep(),
        ];
    }
}
