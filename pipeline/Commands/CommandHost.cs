using System.Data.Common;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The program: which verbs there are, and how faults become exit codes.</summary>
public static class CommandHost
{
    /// <summary>Runs one command line.</summary>
    /// <returns>0 done, 1 failed, 2 bad input or options.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error, TimeProvider clock)
    {
        var registrar = new CommandRegistrar();
        registrar.RegisterInstance(typeof(ProgramIo), new ProgramIo(output, error, clock));
        var app = new CommandApp(registrar);
        app.SetDefaultCommand<Run.RunCommand>();
        app.Configure(Configure);
        using var stop = new CancellationTokenSource();
        ConsoleCancelEventHandler onBreak = (_, e) =>
        {
            e.Cancel = true;
            stop.Cancel();
        };
        Console.CancelKeyPress += onBreak;
        try
        {
            return await app.RunAsync(args, stop.Token).ConfigureAwait(false);
        }
        catch (BadInputException bad)
        {
            foreach (string fault in bad.Faults)
            {
                await error.WriteLineAsync(fault).ConfigureAwait(false);
            }

            return ExitCode.BadInput;
        }
        catch (CommandAppException bad)
        {
            await error.WriteLineAsync($"{bad.Message} Try --help.").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
        catch (OperationCanceledException)
        {
            await error.WriteLineAsync("Stopped; the last complete results are still in place.").ConfigureAwait(false);
            return ExitCode.Failed;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or InvalidDataException or DbException)
        {
            await error.WriteLineAsync($"Failed: {failure.Message}").ConfigureAwait(false);
            return ExitCode.Failed;
        }
        finally
        {
            Console.CancelKeyPress -= onBreak;
        }
    }

    private static void Configure(IConfigurator config)
    {
        config.SetApplicationName("partssignal");
        config.UseStrictParsing();
        config.PropagateExceptions();
        config.AddCommand<Part.PartCommand>("part")
            .WithDescription("The cross-reference of one number: current number, fits, price, lead time, quality.")
            .WithExample("part", "0052105");
        config.AddCommand<Load.LoadCommand>("load")
            .WithDescription("Reads the shop's files and makes them the current store.")
            .WithExample("load", "--input", "data-sample", "--out", "out");
        config.AddCommand<Rates.RatesCommand>("rates")
            .WithDescription("Failure rates with their intervals and their basis.")
            .WithExample("rates", "--component", "inlet_valve");
        config.AddCommand<Inspect.InspectCommand>("inspect")
            .WithDescription("Says what files look like and proposes how to read them.")
            .WithExample("inspect", "shop/jobs.csv", "--write");
        config.AddCommand<Lookup.LookupCommand>("lookup")
            .WithDescription("What a call will probably need, and what to check first.")
            .WithExample("lookup", "--model", "QU-LT", "--complaint", "does not fill", "--age", "6");
        config.AddCommand<Report.ReportCommand>("report")
            .WithDescription("Writes the monthly failure report from the last run's results.")
            .WithExample("report", "--month", "2026-09");
        config.AddCommand<Van.VanCommand>("van")
            .WithDescription("What each van should carry for its money and space.")
            .WithExample("van", "--van", "2", "--budget", "2000");
        config.AddCommand<Run.RunCommand>("run")
            .WithDescription("All steps, from the shop's files to its pages; also what happens without a command.")
            .WithExample("run", "--input", "data-sample", "--out", "out");
        config.AddCommand<Serve.ServeCommand>("serve")
            .WithDescription("Serves reports and lookups on this machine's own address.")
            .WithExample("serve", "--port", "8710");
        config.AddCommand<Sample.SampleCommand>("sample")
            .WithDescription("Writes a fictional shop of any size, with its truth.")
            .WithExample("sample", "--jobs", "20000", "--seed", "1", "--output", "shop");
    }
}
