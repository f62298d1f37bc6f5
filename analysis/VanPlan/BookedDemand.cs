using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>The booked jobs of one van in the indexes of a view.</summary>
/// <param name="Jobs">Per job: the chance that it needs no part, and parts with their chances.</param>
public sealed record BookedDemand(IReadOnlyList<(double NoPart, IReadOnlyList<(double Chance, PartNeed Need)> Parts)> Jobs)
{
    /// <summary>No booked job.</summary>
    public static BookedDemand None { get; } = new([]);

    /// <summary>A van's booked jobs; parts the view does not know are left out.</summary>
    public static BookedDemand From(ShopView view, string van, IReadOnlyList<BookedNeed> booked) => new(
        [.. booked.Where(b => b.Van == van).Select(b => (b.NoPart, (IReadOnlyList<(double, PartNeed)>)
            [.. b.Parts
                .Select(p => (p.Chance, Need: new PartNeed(view.IndexOf(p.PartNumber), p.Quantity)))
                .Where(p => p.Need.Part >= 0 && p.Chance > 0)]))]);

    /// <summary>Jobs expected to be finished at the first visit, when each finds the load whole.</summary>
    public double Finished(IReadOnlyList<int> load) =>
        Jobs.Sum(j => j.NoPart + j.Parts.Where(p => load[p.Need.Part] >= p.Need.Quantity).Sum(p => p.Chance));

    /// <summary>
    /// As jobs of a year: a plan stands until the next restocking, so a job that is sure to come before then weighs as
    /// much as one that comes once every period. The second booked job that may need a part finds it taken when the first
    /// did: pieces out are spread over their probabilities (Poisson-binomial), job by job.
    /// </summary>
    internal IEnumerable<LoadJob> Levels(int reviewDays, double worth)
    {
        double perYear = worth * 365.25 / reviewDays;
        var taken = new Dictionary<int, double[]>();
        foreach (var (noPart, parts) in Jobs)
        {
            yield return new LoadJob(noPart * perYear, []);
            foreach ((double chance, PartNeed need) in parts)
            {
                double[] before = taken.GetValueOrDefault(need.Part, [1]);
                for (int n = 0; n < before.Length; n++)
                {
                    yield return new LoadJob(chance * before[n] * perYear, [new PartNeed(need.Part, n + need.Quantity)]);
                }

                taken[need.Part] = With(before, need.Quantity, chance);
            }
        }
    }

    private static double[] With(double[] before, int pieces, double chance)
    {
        double[] after = new double[before.Length + pieces];
        for (int n = 0; n < before.Length; n++)
        {
            after[n] += before[n] * (1 - chance);
            after[n + pieces] += before[n] * chance;
        }

        return after;
    }
}
