using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Planning;

/// <summary>The shop's settings as options of the van plan.</summary>
internal static class ShopPlanOptions
{
    /// <summary>Converts the settings.</summary>
    /// <exception cref="BadInputException">Some are invalid; lists every fault.</exception>
    public static VanPlanOptions From(ShopSettings settings) => Checked(new VanPlanOptions
    {
        Vans = [.. settings.Vans.Select(v => new VanLimits(v.Van, v.Budget ?? settings.VanBudget, v.Space ?? settings.VanSpace))],
        DefaultBudget = settings.VanBudget,
        DefaultSpace = settings.VanSpace,
        SecondVisitCost = settings.SecondVisitCost,
        HoldingRate = settings.HoldingCostRate,
        ReviewDays = settings.ReviewDays,
        LeadDays = settings.LeadTimeDays,
        OffVanSizes = settings.OffVanSizes,
        Seed = settings.Seed,
    });

    /// <summary>Returns the options if they are valid.</summary>
    public static VanPlanOptions Checked(VanPlanOptions options) =>
        options.Faults() is { Count: > 0 } faults ? throw new BadInputException(faults) : options;
}
