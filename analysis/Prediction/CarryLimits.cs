namespace PartsSignal.Analysis.Prediction;

/// <summary>Limits of the sets at one level of promise: one for all calls, and one per appliance type where there are enough calls.</summary>
/// <param name="Promise">Share of calls to be covered, for example 0.95.</param>
/// <param name="Overall">Limit for every other type; null: too few calls, the set is everything.</param>
/// <param name="ByType">Limit by appliance type (Mondrian sets, Vovk et al. 2005).</param>
/// <param name="Calls">Calls the limits stand on.</param>
public sealed record CarryLimits(double Promise, double? Overall, IReadOnlyDictionary<string, double?> ByType, int Calls)
{
    /// <summary>Fewest calls of a type for a limit of its own.</summary>
    public const int LeastCallsPerType = 50;

    /// <summary>Finds the limits on calls the model did not learn from.</summary>
    public static CarryLimits Fit(IReadOnlyList<Forecast> forecasts, double promise)
    {
        double alpha = 1 - promise;
        var byType = forecasts.GroupBy(f => f.ApplianceType, StringComparer.Ordinal)
            .Where(g => g.Count() >= LeastCallsPerType)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => CarrySet.Limit(g.Select(CarrySet.Score), alpha), StringComparer.Ordinal);
        return new CarryLimits(promise, CarrySet.Limit(forecasts.Select(CarrySet.Score), alpha), byType, forecasts.Count);
    }

    /// <summary>The limit that holds for a type; null: everything.</summary>
    public double? For(string applianceType) => ByType.TryGetValue(applianceType, out double? own) ? own : Overall;

    /// <summary>True when the set of a forecast held what the call needed.</summary>
    public bool Covers(Forecast forecast) =>
        forecast.Truth >= 0 && (For(forecast.ApplianceType) is not { } limit || CarrySet.Score(forecast) <= limit + 1e-12);
}
