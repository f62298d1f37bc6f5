using Spectre.Console;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Where help is written: 80 columns, in colour only on a terminal.</summary>
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
