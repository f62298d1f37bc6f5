using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Analysis.Tests.VanPlan.Loads;

/// <summary>A random instance small enough to try every load; each tour starts from the full load.</summary>
internal sealed record SmallTours(LoadPart[] Parts, LoadLimits Limits, JobStream Jobs)
{
    public RestockRule Restock => new(1, [.. Parts.Select(_ => 0)]);

    public static SmallTours Random(int seed)
    {
        var random = new Random(seed);
        int count = random.Next(3, 6);
        LoadPart[] parts = [.. Enumerable.Range(0, count).Select(i =>
            new LoadPart($"P{i}", random.Next(5, 60) * 100, random.Next(1, 9), random.Next(1, 3)))];
        var jobs = new List<(int, double, IReadOnlyList<PartNeed>)>();
        for (int tour = 0; tour < random.Next(4, 14); tour++)
        {
            double weight = random.Next(1, 5);
            for (int job = 0; job < random.Next(1, 5); job++)
            {
                PartNeed[] needs = [.. Enumerable.Range(0, random.Next(0, 4))
                    .Select(_ => new PartNeed((int)(count * random.NextDouble() * random.NextDouble()), random.Next(10) == 0 ? 2 : 1))];
                jobs.Add((tour, weight, needs));
            }
        }

        long all = parts.Sum(p => p.CostCents * p.MaxUnits);
        double room = parts.Sum(p => p.Space * p.MaxUnits);
        var limits = new LoadLimits((long)(all * (0.2 + (0.5 * random.NextDouble()))),
            random.Next(2) == 0 ? double.PositiveInfinity : Math.Floor(room * (0.3 + (0.4 * random.NextDouble()))));
        return new SmallTours(parts, limits, JobStream.From(jobs));
    }

    public LoadProblem Problem() => LoadProblemBuilder.Build(Parts, RequiredLevels.From(Jobs, Restock), Limits);

    /// <summary>The best load under a rule by trying every one.</summary>
    public (double Best, int[] Pieces) Enumerate(ConsumeRule rule)
    {
        var replay = new FirstComeReplay(Jobs, Restock, rule);
        int[] load = new int[Parts.Length];
        (double best, int[] bestKit) = (replay.Run(load), [.. load]);
        while (Next(load))
        {
            long money = 0;
            double space = 0;
            for (int p = 0; p < load.Length; p++)
            {
                money += load[p] * Parts[p].CostCents;
                space += load[p] * Parts[p].Space;
            }

            if (Limits.Allows(money, space) && replay.Run(load) is var value && value > best)
            {
                (best, bestKit) = (value, [.. load]);
            }
        }

        return (best, bestKit);
    }

    private bool Next(int[] load)
    {
        for (int p = 0; p < load.Length; p++)
        {
            if (load[p]++ < Parts[p].MaxUnits)
            {
                return true;
            }

            load[p] = 0;
        }

        return false;
    }
}
