using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>How people part with their appliances, and what they decide when a repair is offered.</summary>
internal static class Wear
{
    /// <summary>A kitchen is refitted: Weibull shape and scale in years.</summary>
    public const double RefitShape = 3;
    public const double RefitYears = 17;

    /// <summary>Share of units that leave the area in a year.</summary>
    public const double MovesPerYear = 0.025;

    /// <summary>Chance that a failure ends an appliance without a call to anybody.</summary>
    public static double ScrapsAtOnce(double age) => 0.03 + (0.55 * Rise(age, 13, 0.45));

    /// <summary>Chance that a technician and customer find a repair not worth it.</summary>
    public static double NotWorth(double age, decimal price, bool contract)
    {
        double dear = Math.Min(1, (double)price / 160);
        return contract ? 0.25 * dear * Rise(age, 8, 0.8) : 0.85 * dear * Rise(age, 10, 0.5);
    }

    /// <summary>Chance that the customer hears the price and declines.</summary>
    public static double Declines(decimal price, bool contract) =>
        contract ? 0.01 : Math.Min(0.25, 0.015 + ((double)price / 1500));

    /// <summary>Chance that the log ends up with a diagnosis: neither declined nor given up.</summary>
    public static double IsRepaired(double age, decimal price, bool contract) =>
        (1 - NotWorth(age, price, contract)) * (1 - Declines(price, contract));

    private static double Rise(double age, double middle, double slope) => 1 / (1 + ExactMath.Exp(-slope * (age - middle)));
}
