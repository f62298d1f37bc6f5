using System.Data.Common;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The program: which verbs there are, and how faults become exit codes.</summary>
internal static class CommandHost
{
    private const string Unread = "Failed to convert '";

    /// <summary>Runs one command line.</summary>
    /// <returns>0 done, 1 failed, 2 bad input or options.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error, TimeProvider clock)
    {
        var registrar = new CommandRegistrar();
        registrar.RegisterInstance(typeof(ProgramIo), new ProgramIo(output, error, clock));
        var app = new CommandApp(registrar);
        app.SetDefaultCommand<RunCommand>();
        app.Configure(config =>
        {
            config.ConfigureConsole(HelpConsole.For(output));
            Configure(config);
        });
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
            await error.WriteLineAsync($"{Plain(bad.Message)} Try --help.").ConfigureAwait(false);
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

    // The library names the type that a value does not fit, as code has it.
    private static string Plain(string message) =>
        message.IndexOf("' to ", StringComparison.Ordinal) is > 0 and int end && message.StartsWith(Unread, StringComparison.Ordinal)
            ? $"'{message[Unread.Length..end]}' does not fit its option."
            : message;

    private static void Configure(IConfigurator config)
    {
        config.SetApplicationName("partssignal");
        config.UseStrictParsing();
        config.PropagateExceptions();
        foreach (Verb verb in VerbList.All)
        {
            verb.Add(config, verb.Name).WithDescription(verb.What).WithExample(verb.Example);
        }
    }
}
