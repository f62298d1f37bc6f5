namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>Log odds to odds.</summary>
internal static class SoftMax
{
    /// <summary>Turns scores into odds that sum to 1, and returns the log of the odds at <paramref name="at"/>; 0 where that is below 0.</summary>
    public static double Apply(Span<double> scores, int at)
    {
        double top = double.NegativeInfinity;
        foreach (double score in scores)
        {
            top = Math.Max(top, score);
        }

        double sum = 0, own = at >= 0 ? scores[at] - top : 0;
        for (int k = 0; k < scores.Length; k++)
        {
            scores[k] = Math.Exp(scores[k] - top);
            sum += scores[k];
        }

        for (int k = 0; k < scores.Length; k++)
        {
            scores[k] /= sum;
        }

        return at >= 0 ? own - Math.Log(sum) : 0;
    }
}
