using System.Text.Json.Nodes;
using CsCheck;
using PartsSignal.Analysis.Tests.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Analysis.Tests.VanPlan.Replay;

public sealed class FirstComeReplayTests
{
    [Fact]
    public void Run_ReferenceTours_GivesTheReferenceFills()
    {
        Oracle oracle = Oracle.Named("repair_kit_multi_job_scenarios");
        SmallTours tours = Tours(oracle);
        double total = (double)oracle.Expected["total_weighted_jobs"]!;
        var strict = new FirstComeReplay(tours.Jobs, tours.Restock, ConsumeRule.AllOrNothing);
        oracle.Close(oracle.Expected["best_fifo_all_or_nothing_fill"],
            strict.Run(Oracle.Wholes(oracle.Expected["best_fifo_all_or_nothing_kit"])) / total);
        oracle.Close(oracle.Expected["best_fifo_all_or_nothing_fill"], tours.Enumerate(ConsumeRule.AllOrNothing).Best / total);
        int[] choose = Oracle.Wholes(oracle.Expected["best_choose_kit"]);
        oracle.Close(oracle.Expected["fifo_fill_of_choose_kit"], strict.Run(choose) / total);
        var takes = new FirstComeReplay(tours.Jobs, tours.Restock, ConsumeRule.TakeWhatIsThere);
        oracle.Close(oracle.Expected["fifo_take_what_is_there_fill_of_choose_kit"], takes.Run(choose) / total);
    }

    [Fact]
    public void Plan_ReferenceTours_EqualsTheFirstComeOptimum()
    {
        SmallTours tours = Tours(Oracle.Named("repair_kit_multi_job_scenarios"));
        VanLoad plan = VanLoadPlanner.Plan(tours.Problem(), LoadEffort.Thorough);
        Assert.Equal(tours.Enumerate(ConsumeRule.TakeWhatIsThere).Best, plan.Value, 9);
    }

    [Fact]
    public void Run_MissingPart_WaitsForTheNextDelivery()
    {
        // Review every 7 days, 4 days of lead: used on day 1 is back on day 11.
        JobStream jobs = JobStream.From(
        [
            (1, 1, [new PartNeed(0, 1)]), (2, 1, [new PartNeed(0, 1)]), (10, 1, [new PartNeed(0, 1)]),
            (11, 1, [new PartNeed(0, 1)]), (25, 1, [new PartNeed(0, 1)]),
        ]);
        var replay = new FirstComeReplay(jobs, new RestockRule(7, [4]), ConsumeRule.TakeWhatIsThere);
        Assert.Equal(2, replay.Run([1]));
        Assert.Equal([true, false, false, false, true], replay.Done.ToArray());
        Assert.Equal(4, replay.Run([2]));
        Assert.Equal([true, true, false, true, true], replay.Done.ToArray());
        Assert.Equal(5, replay.Run([3]));
    }

    [Fact]
    public void Run_TakeWhatIsThere_EqualsTheLevelsExactly()
    {
        Gen<(int Day, double, IReadOnlyList<PartNeed>)> job =
            from day in Gen.Int[0, 60]
            from needs in Gen.Select(Gen.Int[0, 3], Gen.Int[1, 2], (p, q) => new PartNeed(p, q)).Array[0, 3]
            select (day, 1.0, (IReadOnlyList<PartNeed>)needs);
        Gen.Select(job.Array[1, 60], Gen.Int[1, 9], Gen.Int[0, 12].Array[4], Gen.Int[0, 4].Array[4]).ForAll((jobs, review, lead, load) =>
        {
            JobStream stream = JobStream.From(jobs.OrderBy(j => j.Day));
            var restock = new RestockRule(review, lead);
            double replayed = new FirstComeReplay(stream, restock, ConsumeRule.TakeWhatIsThere).Run(load);
            double levels = RequiredLevels.From(stream, restock).Where(j => j.Levels.All(n => load[n.Part] >= n.Quantity)).Sum(j => j.Weight);
            Assert.Equal(levels, replayed);
        });
    }

    [Fact]
    public void Run_MorePieces_NeverFinishesFewerWhenWhatIsThereIsTaken()
    {
        for (int seed = 0; seed < 50; seed++)
        {
            SmallTours tours = SmallTours.Random(seed);
            var replay = new FirstComeReplay(tours.Jobs, tours.Restock, ConsumeRule.TakeWhatIsThere);
            int[] load = new int[tours.Parts.Length];
            double before = replay.Run(load);
            for (int p = 0; p < load.Length; p++)
            {
                load[p]++;
                double after = replay.Run(load);
                Assert.True(after >= before);
                before = after;
            }
        }
    }

    private static SmallTours Tours(Oracle oracle)
    {
        JsonNode inputs = oracle.Inputs;
        string[] names = [.. inputs["parts"]!.AsArray().Select(n => (string)n!)];
        int[] cost = Oracle.Wholes(inputs["cost"]);
        int[] space = Oracle.Wholes(inputs["space"]);
        int most = (int)inputs["max_units"]!;
        var jobs = new List<(int, double, IReadOnlyList<PartNeed>)>();
        foreach ((JsonNode? tour, int day) in inputs["tours"]!.AsArray().Select((t, i) => (t, i)))
        {
            jobs.AddRange(tour!["jobs"]!.AsArray().Select(j => (day, (double)tour["weight"]!,
                (IReadOnlyList<PartNeed>)[.. j!.AsArray().Select(p => new PartNeed(Array.IndexOf(names, (string)p!), 1))])));
        }

        return new SmallTours([.. names.Select((n, i) => new LoadPart(n, cost[i] * 100, space[i], most))],
            new LoadLimits((long)inputs["budget"]! * 100, (double)inputs["space_limit"]!), JobStream.From(jobs));
    }
}
