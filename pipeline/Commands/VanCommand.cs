using System.ComponentModel;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Publishing;
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
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    [CommandOption("--out <FOLDER>")]
    [Description("Folder that holds the store")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";

    [CommandOption("--van <VAN>")]
    [Description("Only this van")]
    public string? Van { get; init; }

    [CommandOption("--budget <MONEY>")]
    [Description("Most money to tie up in each van's stock")]
    public decimal? Budget { get; init; }

    [CommandOption("--slots <UNITS>")]
    [Description("Space in each van; a small part takes one unit")]
    public double? Slots { get; init; }

    [CommandOption("--target <SHARE>")]
    [Description("Share of jobs to finish at the first visit, such as 0.8: finds the least money for it")]
    public double? Target { get; init; }

    [CommandOption("--list <LIST>")]
    [Description("changes, plan, booked, curve, next or orders")]
    [DefaultValue(VanList.Changes)]
    public VanList List { get; init; } = VanList.Changes;

    [CommandOption("--format <FORMAT>")]
    [Description("table, csv or json")]
    [DefaultValue(OutputFormat.Table)]
    public OutputFormat Format { get; init; } = OutputFormat.Table;
}

/// <summary>Prints what each van should carry for its money and space.</summary>
internal sealed class VanCommand(ProgramIo io) : Command<VanSettings>
{
    public override int Execute(CommandContext context, VanSettings settings, CancellationToken cancellationToken)
    {
        List<string> faults = [.. VanQuery.Faults(settings)];
        var output = new OutputFolder(settings.Out);
        if (!Directory.Exists(output.Store))
        {
            faults.Add($"--out {settings.Out}: there is no store here yet. Run 'partssignal run' first.");
        }

        if (faults.Count > 0)
        {
            throw new BadInputException(faults);
        }

        ShopSettings shop = ShopFile.Load(settings.Input);
        using Database database = CurrentStore.Open(output);
        if (ShopDataReader.Read(database, shop.AsOf) is not { Jobs.Count: > 0 } data)
        {
            io.Out.WriteLine("There are no jobs yet, so nothing shows what a van needs.");
            return ExitCode.Done;
        }

        ShippedModel? model = File.Exists(ModelStore.PathOf(output)) ? ModelStore.Read(output) : null;
        BookedJobs booked = BookedSource.Read(database, data.AsOf, model, settings.Input, shop);
        VanPlanOptions options = VanQuery.Options(settings, shop, data);
        ShopPlan plan = ShopPlan.Create(data, new ShopViews(data, options), options, shop.ServiceTarget, booked);
        VanPrinter.Print(io.Out, settings, plan, booked.Note, shop.Currency);
        return ExitCode.Done;
    }
}
