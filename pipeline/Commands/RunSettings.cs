using System.ComponentModel;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>run</c>.</summary>
internal sealed class RunSettings : CommandSettings
{
    /// <summary>Folder with the shop's files and its shop.json.</summary>
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    /// <summary>The shop.json to use; null: the one in the input folder.</summary>
    [CommandOption("--shop <FILE>")]
    [Description("A shop.json elsewhere than in the input folder")]
    public string? Shop { get; init; }

    /// <summary>Folder that receives everything.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder for the store, the results and the pages")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}
