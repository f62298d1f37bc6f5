using System.ComponentModel;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Shells the script is for.</summary>
internal enum Shell
{
    /// <summary>bash.</summary>
    Bash,

    /// <summary>zsh.</summary>
    Zsh,
}

/// <summary>Options of <c>completion</c>.</summary>
internal sealed class CompletionSettings : CommandSettings
{
    [CommandArgument(0, "<SHELL>")]
    [Description("bash or zsh. For bash, add to ~/.bashrc: source <(partssignal completion bash)")]
    public Shell Shell { get; init; }
}

/// <summary>Prints a script that completes verbs, options and their words with the tab key.</summary>
internal sealed class CompletionCommand(ProgramIo io) : Command<CompletionSettings>
{
    public override int Execute(CommandContext context, CompletionSettings settings, CancellationToken cancellationToken)
    {
        io.Out.Write(CompletionScript.For(settings.Shell, VerbList.All));
        return ExitCode.Done;
    }
}
