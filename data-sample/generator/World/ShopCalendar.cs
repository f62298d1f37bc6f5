using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.World;

/// <summary>Days counted from 2004-01-01, and the days that matter to the shop.</summary>
internal static class ShopCalendar
{
    public static readonly DateOnly Origin = new(2004, 1, 1);

    /// <summary>First day of the job log.</summary>
    public static readonly int LogStart = Day(2021, 7, 1);

    /// <summary>Last day anybody has seen.</summary>
    public static readonly int AsOf = Day(2026, 10, 31);

    /// <summary>The office changes its software on this day.</summary>
    public static readonly int SoftwareChange = Day(2023, 1, 1);

    public const double DaysPerYear = 365.25;

    public static int Day(int year, int month, int day) => new DateOnly(year, month, day).DayNumber - Origin.DayNumber;

    public static DateOnly Date(int day) => Origin.AddDays(day);

    public static int Year(int day) => Date(day).Year;

    /// <summary>Months since January 2004.</summary>
    public static int MonthIndex(int day)
    {
        DateOnly date = Date(day);
        return ((date.Year - Origin.Year) * 12) + date.Month - 1;
    }

    public static int MonthStart(int monthIndex) => Day(Origin.Year + (monthIndex / 12), (monthIndex % 12) + 1, 1);

    /// <summary>Reads 2019-05.</summary>
    public static int Month(string text) =>
        ((int.Parse(text.AsSpan(0, 4), System.Globalization.CultureInfo.InvariantCulture) - Origin.Year) * 12)
        + int.Parse(text.AsSpan(5, 2), System.Globalization.CultureInfo.InvariantCulture) - 1;

    /// <summary>No visits on a Sunday.</summary>
    public static bool IsWorkday(int day) => Date(day).DayOfWeek != DayOfWeek.Sunday;

    public static int NextWorkday(int day) => IsWorkday(day) ? day : day + 1;
}

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
