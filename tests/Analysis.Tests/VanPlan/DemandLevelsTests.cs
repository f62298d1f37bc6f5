using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class DemandLevelsTests
{
    /// <summary>The value of a load is the expected first-come replay: compared with 400 years of jobs drawn at the same rates.</summary>
    [Fact]
    public void Year_KnownDemand_EqualsALongReplay()
    {
        PartSetRate[] sets =
        [
            new([], 0.3), new([new PartNeed(0, 1)], 0.20), new([new PartNeed(1, 1)], 0.05), new([new PartNeed(0, 1), new PartNeed(1, 1)], 0.04),
            new([new PartNeed(2, 2)], 0.03),
        ];
        var demand = new VanDemand(sets, [1e6, 1e6, 1e6], 1e6);
        var restock = new RestockRule(7, [4, 4, 2]);
        LoadProblem problem = LoadProblemBuilder.Build(
            [new LoadPart("A", 1, 1, 9), new LoadPart("B", 1, 1, 9), new LoadPart("C", 1, 1, 9)], DemandLevels.Year(demand, restock, 1), new LoadLimits(100, 100));
        JobStream stream = Draw(sets, 400 * 365, new Random(11));
        var replay = new FirstComeReplay(stream, restock, ConsumeRule.TakeWhatIsThere);
        foreach (int[] load in new int[][] { [0, 0, 0], [1, 1, 2], [3, 1, 0], [4, 2, 4] })
        {
            Assert.Equal(replay.Run(load) / stream.Count, problem.Value(load) / problem.TotalWeight, 0.012);
        }
    }

    [Fact]
    public void Year_Weights_SumToTheJobsOfAYear()
    {
        var demand = new VanDemand([new([new PartNeed(0, 1)], 0.4), new([], 0.1), new([new PartNeed(0, 1), new PartNeed(1, 3)], 0.2)], [3, 3], 10);
        Assert.Equal(0.7 * 365.25, DemandLevels.Year(demand, new RestockRule(7, [4, 4]), 1).Sum(j => j.Weight), 9);
    }

    private static JobStream Draw(PartSetRate[] sets, int days, Random random)
    {
        double all = sets.Sum(s => s.PerDay);
        var jobs = new List<(int, double, IReadOnlyList<PartNeed>)>();
        for (double at = -Math.Log(1 - random.NextDouble()) / all; at < days; at -= Math.Log(1 - random.NextDouble()) / all)
        {
            double pick = random.NextDouble() * all;
            jobs.Add(((int)at, 1, sets.First(s => (pick -= s.PerDay) < 0).Needs));
        }

        return JobStream.From(jobs);
    }
}
