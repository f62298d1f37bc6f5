using System.Globalization;
using PartsSignal.Pipeline.Core;
using PartsSignal.SampleShop;
using PartsSignal.SampleShop.Dialects;
using PartsSignal.SampleShop.Scoring;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Writes a fictional shop of any size, with its truth.</summary>
internal sealed class SampleCommand(ProgramIo io) : Command<SampleSettings>
{
    private const int FewestJobs = 200;

    /// <inheritdoc/>
    public override int Execute(CommandContext context, SampleSettings settings, CancellationToken cancellationToken)
    {
        var faults = new List<string>();
        if (settings.Jobs < FewestJobs)
        {
            faults.Add($"--jobs {settings.Jobs.ToString(CultureInfo.InvariantCulture)}: give {FewestJobs} or more.");
        }

        if (string.IsNullOrWhiteSpace(settings.Output))
        {
            faults.Add("--output is missing: name a new or empty folder.");
        }
        else if (File.Exists(settings.Output) || (Directory.Exists(settings.Output) && Directory.EnumerateFileSystemEntries(settings.Output).Any()))
        {
            faults.Add($"--output {settings.Output}: it is there already; name a new or empty folder.");
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
