using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Prints a script that completes verbs, options and their words with the tab key.</summary>
internal sealed class CompletionCommand(ProgramIo io) : Command<CompletionSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, CompletionSettings settings, CancellationToken cancellationToken)
    {
        io.Out.Write(CompletionScript.For(settings.Shell, VerbList.All));
        return ExitCode.Done;
    }
}
