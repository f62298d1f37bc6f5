using System.ComponentModel;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>inspect</c>.</summary>
internal sealed class InspectSettings : CommandSettings
{
    /// <summary>Files to look at; a folder means every file in it.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("Files to look at; a folder means every table in it")]
    public string[] Files { get; init; } = [];

    /// <summary>Saves the proposed maps.</summary>
    [CommandOption("--write")]
    [Description("Save the proposed maps into shop.json beside the files")]
    public bool Write { get; init; }

    /// <summary>How the proposed columns are printed.</summary>
    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }
}
