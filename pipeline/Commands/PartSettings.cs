using System.ComponentModel;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>part</c>.</summary>
internal sealed class PartSettings : CommandSettings
{
    /// <summary>The number.</summary>
    [CommandArgument(0, "<NUMBER>")]
    [Description("Any number: current, old, or a supplier's own")]
    public string Number { get; init; } = "";

    /// <summary>Folder that holds the store.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder that holds the store")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    /// <summary>Day whose arrows are followed.</summary>
    [CommandOption("--as-of <DAY>")]
    [Description("Follow only the supersessions known on this day, YYYY-MM-DD")]
    public string? AsOf { get; init; }

    /// <summary>How it is printed.</summary>
    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }
}
