namespace PartsSignal.Analysis.PartPrediction.CarrySets;

/// <summary>
/// For jobs that need several parts: the threshold from which parts are carried so that on average no more than a
/// given share of the needed parts is missed (conformal risk control on the false negative rate, Angelopoulos et al. 2024).
/// </summary>
public static class MissedShare
{
    /// <summary>
    /// Largest threshold t among the observed probabilities with n/(n+1) R(t) + 1/(n+1) &lt;= alpha, where R is the mean
    /// share of needed parts with p &lt; t. Null: no threshold keeps the promise; carry everything.
    /// </summary>
    /// <param name="odds">Per job, probability of each part.</param>
    /// <param name="needed">Per job, whether each part was needed; jobs that needed none lose nothing.</param>
    /// <param name="alpha">Share that may be missed, between 0 and 1; below 1/(n+1) nothing can be promised.</param>
    public static double? Threshold(IReadOnlyList<double[]> odds, IReadOnlyList<bool[]> needed, double alpha)
    {
        double n = odds.Count;
        foreach (double t in odds.SelectMany(p => p).Distinct().OrderDescending())
        {
            if (n / (n + 1) * Risk(odds, needed, t) + 1 / (n + 1) <= alpha)
            {
                return t;
            }
        }

        return null;
    }

    /// <summary>Mean share of needed parts whose probability lies below the threshold.</summary>
    public static double Risk(IReadOnlyList<double[]> odds, IReadOnlyList<bool[]> needed, double threshold)
    {
        double sum = 0;
        for (int i = 0; i < odds.Count; i++)
        {
            int parts = 0, missed = 0;
            for (int k = 0; k < odds[i].Length; k++)
            {
                parts += needed[i][k] ? 1 : 0;
                missed += needed[i][k] && odds[i][k] < threshold ? 1 : 0;
            }

            sum += parts == 0 ? 0 : (double)missed / parts;
        }

        return odds.Count == 0 ? 0 : sum / odds.Count;
    }
}
