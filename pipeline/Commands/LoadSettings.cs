using System.ComponentModel;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>load</c>.</summary>
internal sealed class LoadSettings : CommandSettings
{
    /// <summary>Folder with the shop's files and its shop.json.</summary>
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    /// <summary>Folder that receives the store.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder for the store, the rejects and the review lists")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    /// <summary>How the books are printed.</summary>
    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; }

    /// <summary>Also prints every step of the combining, and what staging, combining and publishing took.</summary>
    [CommandOption("--steps")]
    [Description("Also print every step with its rows and seconds, to stderr")]
    public bool Steps { get; init; }

    /// <summary>Also leaves the tables between staged rows and store in a file.</summary>
    [CommandOption("--keep-intermediate")]
    [Description("Also keep the tables between the files and the store in intermediate.duckdb, to look at with any DuckDB client")]
    public bool KeepIntermediate { get; init; }
}
