using System.ComponentModel;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.FullRun;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Staging;
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
internal sealed class RunCommand(ProgramIo io) : AsyncCommand<RunSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, RunSettings settings, CancellationToken cancellation)
    {
        var output = new OutputFolder(settings.Out);
        var progress = ProgressLine.For(io);
        ShopRunResult result = await new ShopRun(settings.Input, output, io.Clock)
        {
            ShopFile = settings.Shop,
            Log = io.Out,
            Progress = progress,
            Loaded = () => progress?.Clear(),
            Begun = () => io.Out.WriteLine(RejectFile.Notice(settings.Out)),
        }.RunAsync(cancellation).ConfigureAwait(false);
        foreach (StagedFile file in result.Load.Staged)
        {
            UnknownCells.Tell(file, io);
        }

        await io.Out.WriteLineAsync($"Report: {Path.GetFullPath(output.NewestReport() ?? output.Reports)}").ConfigureAwait(false);
        if (result.FillInFirst is { } fix)
        {
            await io.Out.WriteLineAsync(fix).ConfigureAwait(false);
        }

        int code = FileErrors.Tell(result.Load, io, result.Assumed, io.Out);
        if (result.Lacking is { } lacking)
        {
            await io.Error.WriteLineAsync($"{lacking.Said} {lacking.OnCommandLine}").ConfigureAwait(false);
            return ExitCode.BadInput;
        }

        return code;
    }
}
