namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// Sets of needs to carry, built from the call's own odds (adaptive prediction sets: Romano, Sesia and Candès 2020):
/// the likeliest needs, until together they reach a threshold. Unsure calls get wider sets, and no set leaves out a need
/// that is likelier than one it holds.
/// </summary>
internal static class CarrySet
{
    /// <summary>Needs inside the set, likeliest first; at least one where there are any.</summary>
    /// <param name="odds">Odds of the call.</param>
    /// <param name="threshold">Odds the set must reach, 0 to 1.</param>
    public static IReadOnlyList<int> Members(IReadOnlyList<double> odds, double threshold)
    {
        var members = new List<int>();
        double held = 0;
        foreach (int k in Enumerable.Range(0, odds.Count).OrderByDescending(k => odds[k]).ThenBy(k => k))
        {
            if (members.Count > 0 && held >= threshold - 1e-12)
            {
                break;
            }

            members.Add(k);
            held += odds[k];
        }

        return members;
    }

    /// <summary>
    /// Score of a forecast: the odds of all needs that rank before the truth. A set holds the truth exactly when its
    /// threshold is above the score. 0 where the truth ranks first; a need never seen scores 1, the worst.
    /// </summary>
    public static double Score(Forecast forecast)
    {
        if (forecast.Truth < 0)
        {
            return 1;
        }

        double before = 0;
        for (int k = 0; k < forecast.Odds.Length; k++)
        {
            double ahead = forecast.Odds[k] - forecast.OfTruth;
            before += ahead > 0 || (ahead == 0 && k < forecast.Truth) ? forecast.Odds[k] : 0;
        }

        return before;
    }
}
