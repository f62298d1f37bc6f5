using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Turns a van's demand into jobs with levels: a job finds its parts when the pieces asked for since the last ones came
/// back leave enough. How many those are is spread over its probabilities, the day of the job over the restocking
/// period, parts taken as independent given the job. The load's value is then the expected first-come replay.
/// </summary>
internal static class DemandLevels
{
    private const double LeastChance = 2e-3;
    private const int MostLevels = 12;
    private const int MostCombinations = 24;
    private const double Covered = 0.96;

    /// <summary>The jobs of a year.</summary>
    /// <param name="demand">The demand.</param>
    /// <param name="restock">Restocking period and lead times.</param>
    /// <param name="worth">Worth of one job finished at the first visit.</param>
    public static IReadOnlyList<LoadJob> Year(VanDemand demand, RestockRule restock, double worth)
    {
        double[][] ahead = Outstanding(demand, restock);
        var jobs = new List<LoadJob>(2 * demand.Sets.Count);
        foreach (PartSetRate set in demand.Sets)
        {
            double weight = set.PerDay * 365.25 * worth;
            if (set.Needs.Count == 1)
            {
                Single(jobs, set.Needs[0], weight, ahead[set.Needs[0].Part]);
            }
            else if (weight > 0)
            {
                Several(jobs, set.Needs, weight, ahead);
            }
        }

        return jobs;
    }

    /// <summary>Chances of 0, 1, ... pieces of each part being out when a job comes.</summary>
    private static double[][] Outstanding(VanDemand demand, RestockRule restock)
    {
        int parts = demand.Evidence.Count;
        double[] jobs = new double[parts];
        var pieces = new double[parts][];
        foreach (PartSetRate set in demand.Sets)
        {
            foreach (PartNeed need in set.Needs)
            {
                jobs[need.Part] += set.PerDay;
                double[] shares = pieces[need.Part] ??= [];
                if (shares.Length < need.Quantity)
                {
                    Array.Resize(ref shares, need.Quantity);
                    pieces[need.Part] = shares;
                }

                shares[need.Quantity - 1] += set.PerDay;
            }
        }

        var chances = new double[parts][];
        for (int p = 0; p < parts; p++)
        {
            double perDay = jobs[p];
            chances[p] = perDay > 0
                ? Window(perDay, 0.5 + demand.Evidence[p], [.. pieces[p].Select(s => s / perDay)], restock.ReviewDays, restock.LeadDays[p])
                : [1];
        }

        return chances;
    }

    private static double[] Window(double perDay, double size, double[] pieces, int reviewDays, int leadDays)
    {
        double[] sum = new double[MostLevels];
        for (int day = 0; day < reviewDays; day++)
        {
            double[] pmf = CompoundDemand.Pmf(perDay * (leadDays + day + 0.5), size, pieces, MostLevels - 1);
            for (int n = 0; n < MostLevels; n++)
            {
                sum[n] += pmf[n] / reviewDays;
            }
        }

        int last = MostLevels;
        while (last > 1 && sum[last - 1] < LeastChance)
        {
            last--;
        }

        return sum[..last];
    }

    private static void Single(List<LoadJob> jobs, PartNeed need, double weight, double[] ahead)
    {
        double left = weight;
        for (int n = 0; n < ahead.Length; n++)
        {
            jobs.Add(new LoadJob(weight * ahead[n], [new PartNeed(need.Part, n + need.Quantity)]));
            left -= weight * ahead[n];
        }

        Missed(jobs, left);
    }

    /// <summary>Combinations of levels, likeliest first, until enough of the chance is covered; the rest goes to the last of them.</summary>
    private static void Several(List<LoadJob> jobs, IReadOnlyList<PartNeed> needs, double weight, double[][] ahead)
    {
        var combinations = new List<(double Chance, PartNeed[] Levels)> { (1, []) };
        foreach (PartNeed need in needs)
        {
            double[] chances = ahead[need.Part];
            combinations = [.. combinations
                .SelectMany(c => chances.Select((chance, n) => (Chance: c.Chance * chance, Levels: (PartNeed[])[.. c.Levels, new PartNeed(need.Part, n + need.Quantity)])))
                .OrderByDescending(c => c.Chance)
                .Take(MostCombinations)];
        }

        double left = 1;
        for (int i = 0; i < combinations.Count && left > 1 - Covered; i++)
        {
            double chance = left - combinations[i].Chance > 1 - Covered && i + 1 < combinations.Count ? combinations[i].Chance : left;
            jobs.Add(new LoadJob(weight * chance, combinations[i].Levels));
            left -= chance;
        }
    }

    /// <summary>What lies beyond the levels looked at counts as asked for, and as never finished: no load can hold so many.</summary>
    private static void Missed(List<LoadJob> jobs, double weight)
    {
        if (weight > 0)
        {
            jobs.Add(new LoadJob(weight, [Unreachable]));
        }
    }

    private static PartNeed Unreachable => new(0, int.MaxValue);
}
