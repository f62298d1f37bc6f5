using System.ComponentModel;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>completion</c>.</summary>
internal sealed class CompletionSettings : CommandSettings
{
    /// <summary>The shell.</summary>
    [CommandArgument(0, "<SHELL>")]
    [Description("bash or zsh; for bash add to ~/.bashrc: source <(partssignal completion bash)")]
    public Shell Shell { get; init; }
}
