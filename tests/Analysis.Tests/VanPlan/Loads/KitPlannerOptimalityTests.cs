using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Analysis.Tests.VanPlan.Loads;

public sealed class KitPlannerOptimalityTests
{
    [Fact]
    public void Plan_200SmallInstances_Within99PercentOfTheFirstComeOptimumAndUnderTheBound() =>
        Check(LoadEffort.Thorough);

    [Fact]
    public void Plan_200SmallInstancesWithoutTheIntegerProgram_Within99PercentAndUnderTheBound() =>
        Check(LoadEffort.Thorough with { IntegerNodes = 0 });

    [Fact]
    public void Plan_200SmallInstancesQuick_BoundNeverBroken()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            SmallTours tours = SmallTours.Random(seed);
            VanLoad plan = VanLoadPlanner.Plan(tours.Problem(), LoadEffort.Quick);
            double best = tours.Enumerate(ConsumeRule.TakeWhatIsThere).Best;
            Assert.True(plan.Bound >= best - 1e-9, $"seed {seed}: bound {plan.Bound} below the optimum {best}");
            Assert.True(plan.Value >= 0.95 * best, $"seed {seed}: {plan.Value} of {best}");
        }
    }

    private static void Check(LoadEffort effort)
    {
        for (int seed = 0; seed < 200; seed++)
        {
            SmallTours tours = SmallTours.Random(seed);
            LoadProblem problem = tours.Problem();
            VanLoad plan = VanLoadPlanner.Plan(problem, effort);
            double best = tours.Enumerate(ConsumeRule.TakeWhatIsThere).Best;
            double replayed = new FirstComeReplay(tours.Jobs, tours.Restock, ConsumeRule.TakeWhatIsThere).Run([.. plan.Quantities]);
            Assert.Equal(replayed, plan.Value, 9);
            Assert.True(problem.Limits.Allows(plan.CostCents, plan.Space), $"seed {seed}: over the limits");
            Assert.True(plan.Bound >= best - 1e-9, $"seed {seed}: bound {plan.Bound} below the optimum {best}");
            Assert.True(replayed >= 0.99 * best, $"seed {seed}: {replayed} of {best}");
        }
    }
}
