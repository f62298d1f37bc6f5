using System.ComponentModel;
using System.Globalization;
using PartsSignal.Pipeline.Core;
using PartsSignal.SampleShop;
using PartsSignal.SampleShop.Dialects;
using PartsSignal.SampleShop.Scoring;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>sample</c>.</summary>
internal sealed class SampleSettings : CommandSettings
{
    [CommandOption("--jobs <N>")]
    [Description("About how many jobs to write, 200 or more")]
    [DefaultValue(SampleShopOptions.CommittedJobs)]
    public int Jobs { get; init; }

    [CommandOption("--seed <S>")]
    [Description("Random seed; the same seed gives the same files")]
    [DefaultValue(SampleShopOptions.CommittedSeed)]
    public long Seed { get; init; }

    [CommandOption("--dialect <SEED>")]
    [Description("Write a small shop in a random office dialect (headers, languages, layouts) with truth.json: the same seed gives the same bytes")]
    public long? Dialect { get; init; }

    [CommandOption("--output <DIR>")]
    [Description("New or empty folder to write to")]
    public string? Output { get; init; }
}

/// <summary>Writes an invented shop of any size, with the right answers.</summary>
internal sealed class SampleCommand(ProgramIo io) : Command<SampleSettings>
{
    private const int FewestJobs = 200;

    public override int Execute(CommandContext context, SampleSettings settings, CancellationToken cancellationToken)
    {
        var faults = new List<string>();
        if (settings.Jobs < FewestJobs)
        {
            faults.Add($"--jobs {settings.Jobs.ToString(CultureInfo.InvariantCulture)}: must be {FewestJobs} or more.");
        }

        if (string.IsNullOrWhiteSpace(settings.Output))
        {
            faults.Add("--output is missing. Name a new or empty folder.");
        }
        else if (File.Exists(settings.Output) || (Directory.Exists(settings.Output) && Directory.EnumerateFileSystemEntries(settings.Output).Any()))
        {
            faults.Add($"--output {settings.Output}: already exists. Name a new or empty folder.");
        }

        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }

        if (settings.Dialect is { } dialect)
        {
            io.Out.WriteLine($"{DialectMaker.Write(dialect, settings.Output!)} written to {settings.Output}");
            return ExitCode.Done;
        }

        WorldFigures figures = SampleShopMaker.Write(new SampleShopOptions(settings.Jobs, settings.Seed, settings.Output!));
        io.Out.WriteLine($"{figures.Jobs.ToString("N0", CultureInfo.InvariantCulture)} jobs written to {settings.Output}");
        foreach (string line in figures.Lines())
        {
            io.Out.WriteLine(line);
        }

        return ExitCode.Done;
    }
}
