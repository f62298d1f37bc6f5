using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Trends;

/// <summary>What becomes of an alarm without the one who makes up most of it.</summary>
/// <param name="Largest">The customer, technician or model with most of the cases, or null if nobody is known.</param>
/// <param name="Cases">Cases of it.</param>
/// <param name="P">Chance of what is left, or null if nothing is left to test.</param>
/// <param name="Survives">True when what is left is still a rise: p at most 0.05 and past the effect gate.</param>
internal sealed record Removal(string? Largest, long Cases, double? P, bool Survives);

/// <summary>Whether a rise is one customer, one technician or one model.</summary>
internal static class LeaveOneOut
{
    private const double StillUnlikely = 0.05;

    /// <summary>Takes all calls of the largest out of the series and its exposure, in every month, and tests again.</summary>
    /// <param name="table">All calls.</param>
    /// <param name="key">The series.</param>
    /// <param name="cases">Calls behind the alarm.</param>
    /// <param name="by">Customer, technician or model of a call.</param>
    /// <param name="test">The alarm's test, for other counts.</param>
    /// <param name="gate">What a rise must pass.</param>
    public static Removal Without(
        CallTable table, SeriesKey key, IReadOnlyList<TrendCall> cases, Func<TrendCall, string?> by, Func<SeriesCounts, SeriesTest?> test, EffectGate gate)
    {
        IGrouping<string, TrendCall>? largest = cases
            .Where(c => by(c) is not null).GroupBy(c => by(c)!, StringComparer.Ordinal)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault();
        if (largest is null)
        {
            return new Removal(null, 0, null, true);
        }

        SeriesTest? again = test(SeriesCounts.From(key, table.Group(key).Where(c => by(c) != largest.Key), table.First, table.Last));
        return new Removal(
            largest.Key, largest.Count(), again?.P,
            again is not null && gate.Passes(again.P <= StillUnlikely ? 0 : 1, again.Ratio, again.Observed));
    }
}
