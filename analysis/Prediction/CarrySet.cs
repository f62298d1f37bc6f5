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

    /// <summary>Largest score that stays inside the set; null: too few scores, so the set is everything.</summary>
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
    /// <param name="limit">Limit from <see cref="Limit"/>; null: all needs.</param>
    public static IReadOnlyList<int> Members(IReadOnlyList<double> odds, double? limit) =>
        [.. Enumerable.Range(0, odds.Count).Where(k => limit is not { } l || 1 - odds[k] <= l + 1e-12).OrderByDescending(k => odds[k]).ThenBy(k => k)];

    /// <summary>Score of a forecast; a need never seen scores 1, the worst.</summary>
    public static double Score(Forecast forecast) => 1 - forecast.OfTruth;
}
