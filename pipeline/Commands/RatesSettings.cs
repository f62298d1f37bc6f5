using System.ComponentModel;
using PartsSignal.Analysis.Rates;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>rates</c>.</summary>
internal sealed class RatesSettings : CommandSettings
{
    /// <summary>Only this component.</summary>
    [CommandOption("--component <NAME>")]
    [Description("Only this component, for example inlet_valve; none: no part was needed.")]
    public string? Component { get; init; }

    /// <summary>Only this model family.</summary>
    [CommandOption("--family <NAME>")]
    [Description("Only this model family.")]
    public string? Family { get; init; }

    /// <summary>Only this age band.</summary>
    [CommandOption("--age <BAND>")]
    [Description("Only this age at the call, in years: 0-2, 2-4, 4-6, 6-8, 8-10, 10-13, 13+ or unknown.")]
    public string? Age { get; init; }

    /// <summary>Only calls with this complaint.</summary>
    [CommandOption("--complaint <KIND>")]
    [Description("Only calls with this complaint, for example no_fill.")]
    public string? Complaint { get; init; }

    /// <summary>What to split by.</summary>
    [CommandOption("--by <SPLIT>")]
    [Description("Split by type, family, brand, age, complaint, " + RateCut.Names + " or supplier (of the parts fitted); by what is asked for if left out.")]
    public string? By { get; init; }

    /// <summary>Only calls of this month.</summary>
    [CommandOption("--month <YYYY-MM>")]
    [Description("Only calls of this month; all time if left out.")]
    public string? Month { get; init; }

    /// <summary>Folder with the shop's files; only its shop.json is read here.</summary>
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's shop.json, which says up to which day the data speaks.")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    /// <summary>Folder that holds the store.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder that holds the store.")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    /// <summary>How to print.</summary>
    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json.")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; } = OutputFormat.Table;
}
