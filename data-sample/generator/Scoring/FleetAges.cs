using System.Collections.Concurrent;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>How many of the units built in a month are still there: what is known about a build date nobody told.</summary>
internal static class FleetAges
{
    /// <summary>Mean days from built to installed.</summary>
    public const double MeanLagDays = 65;

    private const int Years = 24;
    private static readonly ConcurrentDictionary<int, double[]> Known = new();

    /// <summary>Relative number of a family's units of a build month that are alive at an age.</summary>
    public static double Weight(ModelFamily family, int buildMonth, double age)
    {
        double[] alive = Known.GetOrAdd(family.Index, _ => Survival(family));
        double at = Math.Clamp(age, 0, Years - 1.01) * 4;
        int cell = (int)at;
        return family.SalesIn(buildMonth) * (alive[cell] + ((at - cell) * (alive[cell + 1] - alive[cell])));
    }

    /// <summary>Chance that the time from built to installed lies between two numbers of days.</summary>
    public static double LagBetween(double from, double to) => Lag(to) - Lag(from);

    // lag = 5 + 240 U V for uniform U, V: P(UV <= y) = y (1 - ln y)
    private static double Lag(double days)
    {
        double y = (days - 5) / 240;
        return y <= 0 ? 0 : y >= 1 ? 1 : y * (1 - ExactMath.Log(y));
    }

    private static double[] Survival(ModelFamily family)
    {
        double[] alive = new double[Years * 4];
        double risk = 0;
        for (int i = 0; i < alive.Length; i++)
        {
            double age = i / 4.0;
            double refit = ExactMath.Exp(-ExactMath.Pow(age / Wear.RefitYears, Wear.RefitShape));
            alive[i] = refit * ExactMath.Exp(-(Wear.MovesPerYear * age) - risk);
            double failures = 0;
            for (int k = 0; k < family.Causes.Count; k++)
            {
                failures += LifeTables.Rate(family, k, family.LaunchMonth, age);
            }

            double lost = Wear.ScrapsAtOnce(age) + (0.35 * Wear.NotWorth(age, 50, false));
            risk += failures * Math.Min(1, lost) / 4;
        }

        return alive;
    }
}
