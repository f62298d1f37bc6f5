namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// Sets with a promise: carry these, and so many calls in a hundred are covered. Split conformal sets with the score
/// 1 - p of the truth (Vovk et al. 2005; Sadinle, Lei and Wasserman 2019). The promise holds over all calls together
/// while the near future looks like the calibration months; what it then was is reported month by month.
/// </summary>
internal static class CarrySet
{
    /// <summary>Place of the quantile among n sorted scores: ceil((n + 1)(1 - alpha)); above n there is too little to calibrate on.</summary>
    public static int Place(int scores, double alpha) => (int)Math.Ceiling((scores + 1) * (1 - alpha) - 1e-9);

    /// <summary>Largest score that stays inside the set, or null if there are too few scores and the set is everything.</summary>
    /// <param name="scores">Scores 1 - p(truth) of calls the model did not learn from.</param>
    /// <param name="alpha">Share of calls that may be missed, between 0 and 1.</param>
    public static double? Limit(IEnumerable<double> scores, double alpha)
    {
        double[] sorted = [.. scores.Order()];
        int place = Place(sorted.Length, alpha);
        return place > sorted.Length ? null : sorted[Math.Max(place, 1) - 1];
    }

    /// <summary>Needs inside the set, likeliest first.</summary>
    /// <param name="odds">Odds of the call.</param>
    /// <param name="limit">Limit from <see cref="Limit"/>, or null for all needs.</param>
    public static IReadOnlyList<int> Members(IReadOnlyList<double> odds, double? limit) =>
        [.. Enumerable.Range(0, odds.Count).Where(k => limit is not { } l || 1 - odds[k] <= l + 1e-12).OrderByDescending(k => odds[k]).ThenBy(k => k)];

    /// <summary>Score of a forecast; a need never seen scores 1, the worst.</summary>
    public static double Score(Forecast forecast) => 1 - forecast.OfTruth;
}

/// <summary>Limits of the sets at one level of promise: one for all calls, and one per appliance type where there are enough calls.</summary>
/// <param name="Promise">Share of calls to be covered, for example 0.95.</param>
/// <param name="Overall">Limit for every other type, or null if there are too few calls and the set is everything.</param>
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

    /// <summary>The limit that holds for a type, or null for everything.</summary>
    public double? For(string applianceType) => ByType.TryGetValue(applianceType, out double? own) ? own : Overall;

    /// <summary>True when the set of a forecast held what the call needed.</summary>
    public bool Covers(Forecast forecast) =>
        forecast.Truth >= 0 && (For(forecast.ApplianceType) is not { } limit || CarrySet.Score(forecast) <= limit + 1e-12);
}
