using System.Runtime.InteropServices;

namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>Packs parts and jobs into a <see cref="LoadProblem"/>; jobs with the same levels become one.</summary>
internal static class LoadProblemBuilder
{
    /// <summary>Builds the problem.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A weight, price or limit is negative or not a number.</exception>
    public static LoadProblem Build(IReadOnlyList<LoadPart> parts, IEnumerable<LoadJob> jobs, LoadLimits limits)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(limits.BudgetCents);
        ArgumentOutOfRangeException.ThrowIfEqual(limits.Space >= 0, false);
        LoadPart[] all = [.. parts];
        var (merged, alwaysDone, total) = Merge(all, jobs);
        int[] top = new int[all.Length];
        foreach (PartNeed need in merged.Keys.SelectMany(k => k.Needs))
        {
            top[need.Part] = Math.Max(top[need.Part], need.Quantity);
        }

        int[] start = new int[all.Length + 1];
        for (int p = 0; p < all.Length; p++)
        {
            start[p + 1] = start[p] + top[p];
        }

        var units = new LoadUnits(start);
        for (int u = 0; u < units.Total; u++)
        {
            units.Charge[u] = all[units.Part[u]].Charge(units.Piece(u));
        }

        return new LoadProblem(all, limits, units, Pack(merged, units), alwaysDone, total);
    }

    private static (Dictionary<LevelKey, double> Merged, double AlwaysDone, double Total) Merge(LoadPart[] parts, IEnumerable<LoadJob> jobs)
    {
        var merged = new Dictionary<LevelKey, double>();
        double alwaysDone = 0;
        double total = 0;
        foreach (LoadJob job in jobs)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(job.Weight);
            total += job.Weight;
            if (job.Levels.Count == 0)
            {
                alwaysDone += job.Weight;
            }
            else if (job.Weight > 0 && job.Levels.All(n => n.Quantity <= parts[n.Part].MaxUnits))
            {
                CollectionsMarshal.GetValueRefOrAddDefault(merged, new LevelKey([.. job.Levels.OrderBy(n => n.Part)]), out _) += job.Weight;
            }
        }

        return (merged, alwaysDone, total);
    }

    private static LoadJobs Pack(Dictionary<LevelKey, double> merged, LoadUnits units)
    {
        var start = new List<int> { 0 };
        var part = new List<int>();
        var level = new List<int>();
        var weight = new List<double>();
        foreach ((LevelKey key, double worth) in merged.OrderBy(m => m.Key))
        {
            if (key.Needs is [PartNeed only])
            {
                units.Gain[units.Of(only.Part, only.Quantity)] += worth;
                continue;
            }

            part.AddRange(key.Needs.Select(n => n.Part));
            level.AddRange(key.Needs.Select(n => n.Quantity));
            weight.Add(worth);
            start.Add(part.Count);
        }

        return new LoadJobs([.. start], [.. part], [.. level], [.. weight], units);
    }
}

/// <summary>
/// A van is restocked to its plan every so many days. What was used since the last restocking is ordered then and is
/// aboard after the part's lead time, before that day's first job.
/// </summary>
/// <param name="ReviewDays">Days between two restockings, 1 or more.</param>
/// <param name="LeadDays">Lead time of each part in days, 0 or more; 0: from the shop's shelf, at once.</param>
public sealed record RestockRule(int ReviewDays, IReadOnlyList<int> LeadDays)
{
    /// <summary>Day a piece used on a day is replaced, counted from the start of the replay.</summary>
    public int BackAboard(int day, int part) => (((day / ReviewDays) + 1) * ReviewDays) + LeadDays[part];
}
