using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Writing;

/// <summary>How a technician writes the number of a fitted part: as on the label, the old one by habit, the supplier's own, a dash lost.</summary>
internal static class PartTyping
{
    public static string Number(FittedPart fitted, int day, Dice dice)
    {
        PartVersion version = fitted.Part.Versions[fitted.Version];
        double ownNumber = fitted.Part.Component == Faults.PumpComponent ? (fitted.SecondSupplier ? 0.75 : 0.35) : 0.05;
        if (dice.Chance(ownNumber))
        {
            return fitted.SecondSupplier ? version.OwnNumberSecond : version.OwnNumberFirst;
        }

        if (fitted.Version > 0 && day - version.EffectiveDay < 400 && dice.Chance(0.3))
        {
            version = fitted.Part.Versions[fitted.Version - 1];
        }

        return dice.Below(24) switch
        {
            0 => version.Number.Replace("-", "", StringComparison.Ordinal),
            1 => version.Number.ToLowerInvariant(),
            2 => version.Number.Replace("-", " ", StringComparison.Ordinal),
            3 when version.Number.Any(char.IsAsciiLetter) && version.Number.Length > 5 => version.Number.Replace('0', 'O'),
            _ => version.Number,
        };
    }
}
