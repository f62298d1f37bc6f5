using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Rates;

/// <summary>Failures in one age band, and the years in which they were counted.</summary>
/// <param name="Events">Failures.</param>
/// <param name="Exposure">Unit-years, above 0.</param>
public readonly record struct BandCount(long Events, double Exposure);

/// <summary>What the rates of several age bands have in common, as far as the counts can tell.</summary>
public enum AgePatternKind
{
    /// <summary>The bands cannot be told apart.</summary>
    NoDifference,

    /// <summary>One band has a higher rate than all others together, and than each of its neighbors.</summary>
    Peak,

    /// <summary>The older half has the higher rate.</summary>
    Rises,

    /// <summary>The younger half has the higher rate.</summary>
    Falls,
}

/// <summary>
/// Which pattern of rates by age the counts bear out. Two rates are compared with all their events held fixed: x of n
/// events fall into one band as Binomial(n, its share of the exposure) (Przyborowski and Wilenski 1940). A peak was picked
/// as the largest of k bands, so each of its chances must be at most 5 % / k.
/// </summary>
public static class AgeContrast
{
    private const double Alpha = 0.05;

    /// <summary>The pattern; for a peak with the place of its band, else -1.</summary>
    /// <param name="bands">The bands, youngest first.</param>
    public static (AgePatternKind Kind, int Band) Find(IReadOnlyList<BandCount> bands)
    {
        if (bands.Count < 2)
        {
            return (AgePatternKind.NoDifference, -1);
        }

        int top = Enumerable.Range(0, bands.Count).MaxBy(i => bands[i].Events / bands[i].Exposure);
        BandCount rest = Sum(bands.Where((_, i) => i != top));
        IEnumerable<BandCount> neighbors = Enumerable.Range(0, bands.Count).Where(i => Math.Abs(i - top) == 1).Select(i => bands[i]);
        bool peak = bands.Count > 2 && neighbors.Append(rest).All(other => Chance(bands[top], other) <= Alpha / bands.Count);
        if (peak)
        {
            return (AgePatternKind.Peak, top);
        }

        BandCount young = Sum(bands.Take(bands.Count / 2)), old = Sum(bands.Skip((bands.Count + 1) / 2));
        return Chance(old, young) <= Alpha / 2 ? (AgePatternKind.Rises, -1)
            : Chance(young, old) <= Alpha / 2 ? (AgePatternKind.Falls, -1)
            : (AgePatternKind.NoDifference, -1);
    }

    // Chance of so many events or more in the first if both have one rate.
    private static double Chance(BandCount first, BandCount second) =>
        new BinomialDistribution(first.Events + second.Events, first.Exposure / (first.Exposure + second.Exposure)).UpperTail(first.Events - 1);

    private static BandCount Sum(IEnumerable<BandCount> bands)
    {
        BandCount[] all = [.. bands];
        return new BandCount(all.Sum(b => b.Events), all.Sum(b => b.Exposure));
    }
}
