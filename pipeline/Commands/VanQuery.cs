using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Planning;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The shop's plan options with what the command line says over them.</summary>
internal static class VanQuery
{
    /// <summary>Faults of the command line alone.</summary>
    public static IReadOnlyList<string> Faults(VanSettings settings)
    {
        var faults = new List<string>();
        if (settings.Budget < 0)
        {
            faults.Add($"--budget {settings.Budget}: is below 0; give the money a van's stock may tie up.");
        }

        if (settings.Slots is { } slots && !(slots >= 0))
        {
            faults.Add($"--slots {slots}: is not 0 or more; give space units.");
        }

        if (settings.Target is { } target && !(target > 0 && target < 1))
        {
            faults.Add($"--target {target}: is not between 0 and 1; give a share such as 0.8.");
        }

        if (settings.Target is not null && settings.Budget is not null)
        {
            faults.Add("--target with --budget: give one of them; the target finds the budget.");
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
            throw new BadInputException($"--van {settings.Van}: no such van; there are {string.Join(", ", view.Vans.Select(v => v.Van))}.");
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
                faults.Add($"--target {target}: no money reaches it on van {planned.Van.Van} within {planned.Van.Space} space units; give a lower target or more --slots.");
            }
        }

        return faults.Count > 0
            ? throw new BadInputException(faults)
            : options with { Vans = vans, Objective = PlanObjective.Completions };
    }
}
