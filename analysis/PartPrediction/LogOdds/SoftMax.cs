namespace PartsSignal.Analysis.PartPrediction.LogOdds;

/// <summary>Log odds to odds.</summary>
internal static class SoftMax
{
    /// <summary>Turns the scores at the given places into odds that sum to 1, and returns the log of the odds at <paramref name="at"/>.</summary>
    public static double Apply(double[] scores, int[] places, int at)
    {
        double top = double.NegativeInfinity;
        foreach (int k in places)
        {
            top = Math.Max(top, scores[k]);
        }

        double sum = 0, own = at >= 0 ? scores[at] - top : 0;
        foreach (int k in places)
        {
            scores[k] = Math.Exp(scores[k] - top);
            sum += scores[k];
        }

        foreach (int k in places)
        {
            scores[k] /= sum;
        }

        return own - Math.Log(sum);
    }
}
