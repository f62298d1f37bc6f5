using System.ComponentModel;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>report</c>.</summary>
internal sealed class ReportSettings : CommandSettings
{
    /// <summary>Month, for example 2024-02; null: the newest that has ended and has calls.</summary>
    [CommandOption("--month <YYYY-MM>")]
    [Description("Month of the calls, or all; otherwise the newest that has ended and has calls")]
    public string? Month { get; init; }

    /// <summary>Folder with the shop's shop.json.</summary>
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    /// <summary>Folder a run has written to.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the last run")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}
