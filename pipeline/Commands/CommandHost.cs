using System.Data.Common;
using System.Text.RegularExpressions;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using Spectre.Console;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Runs a command line and turns failures into messages and exit codes.</summary>
internal static partial class CommandHost
{
    private const string Unread = "Failed to convert '";
    private const string Choices = "Valid values are ";

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
            Configure(config, args);
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
            await error.WriteLineAsync($"{Plain(bad.Message, args)} Try --help.").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
        catch (OperationCanceledException)
        {
            await error.WriteLineAsync("Stopped. The results of the last complete run are unchanged.").ConfigureAwait(false);
            return ExitCode.Failed;
        }
        catch (TableShapeException)
        {
            await error.WriteLineAsync("These results were made by another version of the program. Run 'partssignal run' once; your files and answers stay as they are.").ConfigureAwait(false);
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

    // The library's message names a .NET type; say instead what to type.
    private static string Plain(string message, string[] args)
    {
        if (message.StartsWith("Invalid ", StringComparison.Ordinal) && Array.Find(args, IsNoOption) is { } bad)
        {
            return $"'{bad}' is not an option. Options are written like --month 2026-09.";
        }

        if (!message.StartsWith(Unread, StringComparison.Ordinal) || message.IndexOf("' to ", StringComparison.Ordinal) is not (> 0 and int end))
        {
            return message;
        }

        string value = message[Unread.Length..end];
        int choices = message.IndexOf(Choices, StringComparison.Ordinal);
        return choices < 0
            ? $"'{value}' must be a plain number, for example 12."
            : $"'{value}' must be one of {message[(choices + Choices.Length)..].Replace("'", "", StringComparison.Ordinal).ToLowerInvariant().TrimEnd('.')}.";
    }

    private static bool IsNoOption(string arg) => arg.StartsWith('-') && arg.Length > 1 && !OptionName().IsMatch(arg);

    [GeneratedRegex("^(--[A-Za-z][A-Za-z-]*|-[A-Za-z])([=:].*)?$")]
    private static partial Regex OptionName();

    private static void Configure(IConfigurator config, string[] args)
    {
        config.SetApplicationName("partssignal");
        config.UseStrictParsing();
        config.PropagateExceptions();
        foreach (Verb verb in VerbList.For(args))
        {
            verb.Add(config, verb.Name).WithDescription(verb.What).WithExample(verb.Example);
        }
    }
}

/// <summary>Console for the help text: 80 columns, in color only on a terminal.</summary>
internal static class HelpConsole
{
    private const int Columns = 80;

    /// <summary>A console over a writer.</summary>
    public static IAnsiConsole For(TextWriter output)
    {
        bool terminal = ReferenceEquals(output, Console.Out) && !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("NO_COLOR") is null or "";
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = terminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = terminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(output),
        });
        console.Profile.Width = Columns;
        return console;
    }
}
