using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Intervals;

/// <summary>How many units there are, judged from how often those that called have called.</summary>
/// <param name="UnitsSeen">Units with at least one visit.</param>
/// <param name="MeanVisits">Visits per unit seen, or null if none was seen.</param>
/// <param name="VisitsPerUnit">Zero-truncated Poisson mean by maximum likelihood, or null if every unit called once, so it has no estimate.</param>
/// <param name="UnitsByTruncatedPoisson">Units seen / (1 - e^-mean): right only if all units call alike; null with the mean.</param>
/// <param name="LowerBound">Chao's (1987) n + f1^2 / 2 f2, a lower bound however unlike units are; null where no unit called twice.</param>
/// <param name="LowerBoundCorrected">n + f1 (f1 - 1) / 2 (f2 + 1), always defined.</param>
internal sealed record CaptureRecapture(
    long UnitsSeen, double? MeanVisits, double? VisitsPerUnit, double? UnitsByTruncatedPoisson, double? LowerBound, double LowerBoundCorrected)
{
    /// <summary>From units by number of visits.</summary>
    /// <param name="unitsByVisits">Visits (1 or more) to number of units.</param>
    public static CaptureRecapture From(IReadOnlyDictionary<int, long> unitsByVisits)
    {
        long units = unitsByVisits.Values.Sum();
        double f1 = unitsByVisits.GetValueOrDefault(1), f2 = unitsByVisits.GetValueOrDefault(2);
        double corrected = units + (f1 * (f1 - 1) / (2 * (f2 + 1)));
        double? bound = f2 > 0 ? units + (f1 * f1 / (2 * f2)) : null;
        if (units == 0)
        {
            return new CaptureRecapture(0, null, null, null, null, 0);
        }

        double mean = unitsByVisits.Sum(v => (double)v.Key * v.Value) / units;
        double? lambda = mean > 1 ? RootFinder.Find(l => (l / (1 - Math.Exp(-l))) - mean, 1e-9, mean) : null;
        return new CaptureRecapture(units, mean, lambda, lambda is { } l ? units / (1 - Math.Exp(-l)) : null, bound, corrected);
    }
}
