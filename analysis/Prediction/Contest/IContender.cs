using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>A way to learn a predictor from closed jobs.</summary>
public interface IContender
{
    /// <summary>Short name in tables and files.</summary>
    string Name { get; }

    /// <summary>What it is, in a sentence.</summary>
    string What { get; }

    /// <summary>Place among the contenders by simplicity, from 0; of two that cannot be told apart the simpler ships.</summary>
    int Complexity { get; }

    /// <summary>Learns from jobs. The same jobs give the same predictor.</summary>
    /// <param name="calls">Closed jobs.</param>
    /// <param name="earlier">What the same contender learned at an earlier cut-off, to start from, or null to start afresh.</param>
    IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null);
}

/// <summary>How a contender did in the validation months.</summary>
/// <param name="Name">The contender.</param>
/// <param name="What">What it is.</param>
/// <param name="Temperature">Temperature found on the calibration months.</param>
/// <param name="Scores">Its figures in the validation months.</param>
/// <param name="Behind">Mean log loss above the best contender's, nats per job, paired job by job, with its week-block interval.</param>
/// <param name="Ships">True for the one that ships.</param>
public sealed record ContestEntry(string Name, string What, double Temperature, Scores Scores, Estimate Behind, bool Ships)
{
    /// <summary>
    /// Where its log loss was the lowest of all in the validation months: <c>all</c>, <c>type:T</c>, <c>complaint:K</c>, each with
    /// 50 calls or more. Of equals the simplest wins.
    /// </summary>
    public IReadOnlyList<string> Wins { get; init; } = [];
}

/// <summary>Forecasts made at several cut-offs with the temperature that was known then.</summary>
internal static class Heated
{
    /// <summary>Forecasts at a temperature.</summary>
    public static IReadOnlyList<Forecast> At(IReadOnlyList<Forecast> forecasts, double temperature) =>
        [.. forecasts.Select(f => f with { Odds = TemperatureScaling.Apply(f.Odds, temperature) })];
}
