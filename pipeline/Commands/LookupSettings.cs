using System.ComponentModel;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>lookup</c>.</summary>
public sealed class LookupSettings : CommandSettings
{
    /// <summary>Model number as on the label, or a family.</summary>
    [CommandOption("--model <MODEL>")]
    [Description("Model number as on the label, or a family")]
    public string? Model { get; init; }

    /// <summary>What the customer said.</summary>
    [CommandOption("--complaint <TEXT>")]
    [Description("What the customer said, or a complaint kind such as no_fill")]
    public string? Complaint { get; init; }

    /// <summary>Serial number, for the age and what was done before.</summary>
    [CommandOption("--serial <SERIAL>")]
    [Description("Serial number; tells the age, and what was done to this very appliance before")]
    public string? Serial { get; init; }

    /// <summary>Age in years.</summary>
    [CommandOption("--age <YEARS>")]
    [Description("Age in years, where it is known otherwise")]
    public double? Age { get; init; }

    /// <summary>Type of the appliance, where the model does not say.</summary>
    [CommandOption("--type <TYPE>")]
    [Description("washer, dryer, dishwasher, refrigerator, range or microwave, where the model does not say")]
    public string? ApplianceType { get; init; }

    /// <summary>Error code shown.</summary>
    [CommandOption("--code <CODE>")]
    [Description("Error code on the display")]
    public string? Code { get; init; }

    /// <summary>Kind of customer.</summary>
    [CommandOption("--customer <KIND>")]
    [Description("household or contract; default: what the shop knows of the serial, else household")]
    public string? Customer { get; init; }

    /// <summary>Day of the call.</summary>
    [CommandOption("--on <DATE>")]
    [Description("Day of the call as 2026-11-24; default: today")]
    public string? On { get; init; }

    /// <summary>Folder with the shop's files.</summary>
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files: its own words, checks and serial codes")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    /// <summary>Folder of the last run.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the last run")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    /// <summary>How the answer is printed.</summary>
    [CommandOption("--format <FORMAT>")]
    [Description("table, csv (the odds alone) or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }
}
