using System.ComponentModel;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Which list of the plan is printed.</summary>
internal enum VanList
{
    /// <summary>Steps from what is aboard to the plan.</summary>
    Changes,

    /// <summary>Every part of the plan with its minimum and target.</summary>
    Plan,

    /// <summary>What the jobs already booked may need.</summary>
    Booked,

    /// <summary>Completion against budget.</summary>
    Curve,

    /// <summary>Parts just beyond and just within the plan.</summary>
    Next,

    /// <summary>What to buy.</summary>
    Orders,
}

/// <summary>Options of <c>van</c>.</summary>
internal sealed class VanSettings : CommandSettings
{
    /// <summary>Folder with the shop's shop.json.</summary>
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    /// <summary>Folder that holds the store.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder that holds the store")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    /// <summary>Only this van.</summary>
    [CommandOption("--van <VAN>")]
    [Description("Only this van")]
    public string? Van { get; init; }

    /// <summary>Money per van.</summary>
    [CommandOption("--budget <MONEY>")]
    [Description("Money each van's stock may tie up")]
    public decimal? Budget { get; init; }

    /// <summary>Space units per van.</summary>
    [CommandOption("--slots <UNITS>")]
    [Description("Space units of each van; a small part takes one")]
    public double? Slots { get; init; }

    /// <summary>Wanted share of jobs finished at the first visit.</summary>
    [CommandOption("--target <SHARE>")]
    [Description("Wanted first-visit completion, 0 to 1: plans with the least money that is expected to reach it")]
    public double? Target { get; init; }

    /// <summary>Which list.</summary>
    [CommandOption("--list <LIST>")]
    [Description("changes, plan, booked, curve, next or orders")]
    [DefaultValue(VanList.Changes)]
    public VanList List { get; init; } = VanList.Changes;

    /// <summary>How the tables are printed.</summary>
    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; } = OutputFormat.Table;
}
