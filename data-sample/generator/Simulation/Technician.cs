using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>A technician and how often the first diagnosis is right.</summary>
internal sealed record Technician(string Name, double Skill, int FromDay, int ToDay)
{
    private static readonly (string Name, double Skill, int From, int To)[] Crew =
    [
        ("Jonna", 0.97, 0, int.MaxValue),
        ("Piet", 0.93, 0, ShopCalendar.Day(2024, 3, 1)),
        ("Marius", 0.94, 0, int.MaxValue),
        ("Tilly", 0.89, ShopCalendar.Day(2024, 3, 1), int.MaxValue),
    ];

    /// <summary>Share of right first diagnoses over the whole crew.</summary>
    public const double MeanSkill = 0.935;

    public static IReadOnlyList<Technician> ForArea(int area)
    {
        string mark = area == 0 ? "" : $" {(area + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}";
        return [.. Crew.Select(c => new Technician(c.Name + mark, c.Skill, c.From, c.To))];
    }

    /// <summary>Who drives a van on a day: its own technician, now and then another.</summary>
    public static Technician On(IReadOnlyList<Technician> crew, int van, int day, Dice dice)
    {
        Technician[] present = [.. crew.Where(t => day >= t.FromDay && day < t.ToDay)];
        return dice.Chance(0.08) ? dice.Pick(present) : present[van % present.Length];
    }

    /// <summary>How much harder a cause is to find than the average, as a factor on the share of wrong diagnoses.</summary>
    public static double Difficulty(Cause cause) => cause.Component switch
    {
        "control_board" or "timer" => 1.7,
        "level_switch" or "float_switch" or "thermistor" => 1.4,
        "door_seal" or "drive_belt" or "surface_element" or "lamp" or "drain_hose" => 0.4,
        Cause.NoPart => 0.8,
        _ => 1.0,
    };

    public double MissChance(Cause cause) => Math.Min(0.25, (1 - Skill) * Difficulty(cause));

    public static double MeanMissChance(Cause cause) => Math.Min(0.25, (1 - MeanSkill) * Difficulty(cause));
}

/// <summary>What a cause is taken for when it is taken for something else.</summary>
internal static class Mistaken
{
    /// <summary>
    /// Weight of each cause of the family when the diagnosis is wrong: what shows the same way and is common.
    /// All zero: nothing else shows so, and the diagnosis is right.
    /// </summary>
    public static double[] Weights(ModelFamily family, int truth, string shownKind)
    {
        double[] weights = new double[family.Causes.Count];
        for (int k = 0; k < weights.Length; k++)
        {
            Cause cause = family.Causes[k].Cause;
            bool other = k != truth && (cause.NeedsPart || family.Causes[truth].Cause.NeedsPart);
            weights[k] = other ? ComplaintOdds.Of(family, cause, shownKind) / family.Causes[k].ScaleYears : 0;
        }

        return weights;
    }
}
