using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Planning;

namespace PartsSignal.Pipeline.Commands;

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
