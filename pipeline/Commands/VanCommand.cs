using System.ComponentModel;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
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
    [Description("Folder with the shop's shop.json; default: that of the last run")]
    public string? Input { get; init; }

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

        string input = ShopInUse.Input(settings.Input, output);
        ShopSettings shop = ShopFile.Load(input);
        ShopInUse.PrintName(io.Out, settings.Format, shop);
        using Database database = CurrentStore.Open(output);
        if (ShopDataReader.Read(database, shop.AsOf) is not { Jobs.Count: > 0 } data)
        {
            io.Out.WriteLine("There are no jobs yet, so nothing shows what a van needs.");
            return ExitCode.Done;
        }

        if (settings.Format == OutputFormat.Table && VanStandIn.Of(database) is { } standIn)
        {
            io.Out.WriteLine(standIn.Sentence);
        }

        if (settings.Format == OutputFormat.Table && PartsInWords.Of(database) is { } words)
        {
            io.Out.WriteLine(words.Sentence);
        }

        ShippedModel? model = File.Exists(ModelStore.PathOf(output)) ? ModelStore.Read(output) : null;
        BookedJobs booked = BookedSource.Read(database, data.AsOf, model, input, shop);
        VanPlanOptions options = VanQuery.Options(settings, StoredVans.Name(shop, output, database), data);
        var views = new ShopViews(data, options);
        ShopPlan plan = ShelfStock.Use(ShopPlan.Create(data, views, options, shop.ServiceTarget, booked), data, booked.Waiting, views.Facts, options);
        if (plan.Summaries.Count == 0 && settings.Format == OutputFormat.Table)
        {
            io.Out.WriteLine("No plan: no finished job names its parts by number. Add the part numbers of the parts you fit to your job log.");
            return ExitCode.Done;
        }

        VanPrinter.Print(io.Out, settings, plan, booked.Note, shop.Currency);
        return ExitCode.Done;
    }
}

/// <summary>The shop's plan options, overridden by the command line.</summary>
internal static class VanQuery
{
    /// <summary>Faults of the command line alone.</summary>
    public static IReadOnlyList<string> Faults(VanSettings settings)
    {
        var faults = new List<string>();
        if (settings.Budget < 0)
        {
            faults.Add($"--budget {settings.Budget}: must be a plain number of 0 or more, for example 1800.");
        }

        if (settings.Slots is { } slots && !(slots >= 0))
        {
            faults.Add($"--slots {slots}: must be a plain number of 0 or more, for example 200.");
        }

        if (settings.Target is { } target && !(target > 0 && target < 1))
        {
            faults.Add($"--target {target}: must be between 0 and 1, for example 0.8.");
        }

        if (settings.Target is not null && settings.Budget is not null)
        {
            faults.Add("--target and --budget: give only one. With a target, the budget is found for you.");
        }

        return faults;
    }

    /// <summary>Options for the vans asked for.</summary>
    /// <exception cref="BadInputException">The van is not one of the shop's.</exception>
    public static VanPlanOptions Options(VanSettings settings, ShopSettings shop, ShopData data)
    {
        VanPlanOptions options = ShopPlanOptions.From(shop);
        ShopView view = new ShopViews(data, options).Before(data.AsOf.AddDays(1));
        if (settings.Van is not null && view.Vans.All(v => v.Van != settings.Van))
        {
            throw new BadInputException($"--van {settings.Van}: there is no such van. The vans are {string.Join(", ", view.Vans.Select(v => v.Van))}.");
        }

        VanPlanOptions asked = ShopPlanOptions.Checked(options with
        {
            Vans = [.. view.Vans.Select(v => v with { Budget = settings.Budget ?? v.Budget, Space = settings.Slots ?? v.Space })],
        });
        return settings.Target is { } target ? ForTarget(asked, data, target, settings.Van) : asked;
    }

    private static VanPlanOptions ForTarget(VanPlanOptions options, ShopData data, double target, string? only)
    {
        ShopView view = new ShopViews(data, options).Before(data.AsOf.AddDays(1));
        var faults = new List<string>();
        var vans = new List<VanLimits>();
        foreach (PlannedVan planned in VanPlanner.Plan(view, options, LoadEffort.Quick))
        {
            decimal? budget = only is null || planned.Van.Van == only ? BudgetCurve.BudgetFor(planned, target, options) : planned.Van.Budget;
            vans.Add(planned.Van with { Budget = budget ?? planned.Van.Budget });
            if (budget is null)
            {
                faults.Add($"--target {target}: van {planned.Van.Van} cannot reach it with {planned.Van.Space} space units at any budget. Give a lower target or more --slots.");
            }
        }

        return faults.Count > 0
            ? throw new BadInputException(faults)
            : options with { Vans = vans, Objective = PlanObjective.Completions };
    }
}
