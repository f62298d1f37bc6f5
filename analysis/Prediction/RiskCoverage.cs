namespace PartsSignal.Analysis.Prediction;

/// <summary>How often the likeliest need is wrong when only the surest calls are answered.</summary>
/// <param name="Coverage">Share of calls answered, 0 to 1.</param>
/// <param name="Confidence">Confidence from which they are answered.</param>
/// <param name="Jobs">Calls answered.</param>
/// <param name="Risk">Share of them where the likeliest need was wrong.</param>
internal sealed record RiskPoint(double Coverage, double Confidence, int Jobs, double Risk);

/// <summary>Risk against coverage (Chow 1970): what answering fewer calls would buy.</summary>
internal static class RiskCoverage
{
    /// <summary>One point per step of coverage, from the surest calls to all of them.</summary>
    /// <param name="forecasts">The calls.</param>
    /// <param name="points">Number of points, 1 or more.</param>
    public static IReadOnlyList<RiskPoint> Curve(IReadOnlyList<Forecast> forecasts, int points = 20)
    {
        (double Said, bool Right)[] sorted = Reliability.Sorted(forecasts);
        Array.Reverse(sorted);
        var curve = new List<RiskPoint>();
        int wrong = 0, at = 0;
        for (int p = 1; p <= points && sorted.Length > 0; p++)
        {
            int upTo = (int)Math.Max(1, (long)sorted.Length * p / points);
            for (; at < upTo; at++)
            {
                wrong += sorted[at].Right ? 0 : 1;
            }

            if (curve.Count == 0 || curve[^1].Jobs < upTo)
            {
                curve.Add(new RiskPoint((double)upTo / sorted.Length, sorted[upTo - 1].Said, upTo, (double)wrong / upTo));
            }
        }

        return curve;
    }
}
