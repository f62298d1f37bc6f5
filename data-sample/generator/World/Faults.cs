using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.World;

/// <summary>What went wrong in the world, with its dates.</summary>
internal static class Faults
{
    public const string BatchFamily = "VE-WX";
    public const string BatchComponent = "inlet_valve";

    /// <summary>Build months of the bad inlet valves, both ends inside.</summary>
    public static readonly int BatchFirst = ShopCalendar.Month("2023-10");
    public static readonly int BatchLast = ShopCalendar.Month("2025-05");

    /// <summary>Share of the valves of those months that are bad.</summary>
    public const double BatchShare = 0.34;
    public const double BatchShape = 3.5;
    public const double BatchScaleYears = 1.25;

    public const string PumpComponent = "drain_pump";

    /// <summary>Share of the second supplier's drain pumps that die early.</summary>
    public const double PumpEarlyShare = 0.22;
    public const double PumpEarlyShape = 1.1;
    public const double PumpEarlyScaleYears = 0.30;

    public static bool InBatch(ModelFamily family, Cause cause, int buildMonth) =>
        family.Code == BatchFamily && cause.Component == BatchComponent && buildMonth >= BatchFirst && buildMonth <= BatchLast;

    /// <summary>Years of household use until a factory-fitted or freshly fitted part fails.</summary>
    public static double DrawLife(ModelFamily family, FamilyCause cause, int buildMonth, bool firstLife, bool fromSecondSupplier, Dice dice)
    {
        if (firstLife && InBatch(family, cause.Cause, buildMonth) && dice.Chance(BatchShare))
        {
            return dice.Weibull(BatchShape, BatchScaleYears);
        }

        if (fromSecondSupplier && cause.Cause.Component == PumpComponent && dice.Chance(PumpEarlyShare))
        {
            return dice.Weibull(PumpEarlyShape, PumpEarlyScaleYears);
        }

        return dice.Weibull(cause.Cause.Shape, cause.ScaleYears);
    }
}
