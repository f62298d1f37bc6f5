namespace PartsSignal.Analysis.Prediction;

/// <summary>What a set of forecasts was worth. Every figure is null where there were no calls.</summary>
/// <param name="Jobs">Calls judged.</param>
/// <param name="LogLoss">Mean -log probability of the truth, nats; lower is better.</param>
/// <param name="Brier">Mean squared error over all needs, 0 to 2; lower is better.</param>
/// <param name="Top1">Share where the likeliest need was right.</param>
/// <param name="Top3">Share where the truth was among the three likeliest.</param>
/// <param name="Top5">Share where the truth was among the five likeliest.</param>
/// <param name="MeanReciprocalRank">Mean of 1/rank of the truth, equal odds sharing the better rank; 0 for a need never seen.</param>
/// <param name="CalibrationError">Expected calibration error of the likeliest need, ten bins of equal size.</param>
/// <param name="NeverSeen">Share of calls whose need the predictor had never seen: no skill can win those.</param>
public sealed record Scores(
    int Jobs, double? LogLoss, double? Brier, double? Top1, double? Top3, double? Top5, double? MeanReciprocalRank, double? CalibrationError, double? NeverSeen)
{
    /// <summary>Judges forecasts. A need that was never seen in training is a miss, never left out.</summary>
    public static Scores From(IReadOnlyList<Forecast> forecasts)
    {
        if (forecasts.Count == 0)
        {
            return new Scores(0, null, null, null, null, null, null, null, null);
        }

        int?[] ranks = [.. forecasts.Select(f => f.Rank)];
        return new Scores(
            forecasts.Count,
            forecasts.Average(f => f.LogLoss),
            forecasts.Average(f => f.Brier),
            TopShare(ranks, 1),
            TopShare(ranks, 3),
            TopShare(ranks, 5),
            forecasts.Average(f => f.SharedRank is { } place ? 1.0 / place : 0),
            Reliability.Error(Reliability.Table(forecasts)),
            ranks.Average(r => r is null ? 1.0 : 0.0));
    }

    /// <summary>Share of ranks within the first <paramref name="k"/>; null ranks are misses.</summary>
    public static double TopShare(IReadOnlyList<int?> ranks, int k) => ranks.Average(r => r <= k ? 1.0 : 0.0);
}
