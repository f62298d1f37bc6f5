using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>The two suppliers and how long they take.</summary>
internal static class Supplier
{
    public const string First = "Haldorvane";
    public const string Second = "Brixomere";

    public static string Name(bool second) => second ? Second : First;

    /// <summary>Day a line ordered today arrives; the second supplier runs short every winter.</summary>
    public static int ArrivalDay(int day, bool second, Dice dice)
    {
        double days = second ? dice.LogNormal(5, 0.45) : dice.LogNormal(2.8, 0.40);
        int month = ShopCalendar.Date(day).Month;
        if (second && month is 11 or 12 or 1 && dice.Chance(0.22))
        {
            days *= 4;
        }

        return ShopCalendar.NextWorkday(day + Math.Max(1, (int)Math.Round(days)));
    }
}

/// <summary>A line of an order.</summary>
internal sealed class OrderLine
{
    public required string OrderId { get; init; }

    public required bool Second { get; init; }

    public required int OrderedDay { get; init; }

    public required int ArrivesDay { get; init; }

    public required PartLineage Part { get; init; }

    public required int Version { get; init; }

    public required int Quantity { get; init; }

    /// <summary>Job it was ordered for; null: for stock.</summary>
    public required string? JobId { get; init; }

    /// <summary>Van it restocks; -1: for a job.</summary>
    public required int Van { get; init; }

    public int Returned { get; init; }

    public string ReturnReason { get; init; } = "";
}
