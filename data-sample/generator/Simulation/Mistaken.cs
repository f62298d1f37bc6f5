using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

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
