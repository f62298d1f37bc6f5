using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.Tests.VanPlan.Loads;

public sealed class KitPlannerTests
{
    private static readonly LoadEffort Managed = LoadEffort.Thorough with { IntegerNodes = 0 };

    [Theory]
    [InlineData("repair_kit_single_job_greedy_suboptimal")]
    [InlineData("repair_kit_most_used_first_fails")]
    public void Plan_ReferenceKit_FindsTheOptimumWithAndWithoutTheIntegerProgram(string name)
    {
        RepairKitCase kit = RepairKitCase.Named(name);
        foreach (LoadEffort effort in new[] { LoadEffort.Thorough, Managed })
        {
            VanLoad plan = VanLoadPlanner.Plan(kit.Problem, effort);
            Assert.Equal(kit.Kit("optimal_kit"), plan.Quantities);
            kit.Oracle.Close(kit.Oracle.Expected["optimal_fill"], plan.Value);
            Assert.InRange(plan.Bound, plan.Value, plan.Value * 1.0011);
        }
    }

    [Fact]
    public void LagrangianBound_MoneyOnly_EqualsTheLinearRelaxation()
    {
        RepairKitCase kit = RepairKitCase.Named("repair_kit_single_job_greedy_suboptimal");
        kit.Oracle.Close(kit.Oracle.Expected["lp_relaxation_bound"], LagrangianBound.Compute(kit.Problem).Bound);
    }

    [Theory]
    [InlineData("greedy_ratio_kit", "greedy_ratio_fill")]
    [InlineData("most_used_first_kit", "most_used_first_fill")]
    public void Value_ReferenceKit_CountsWholePartSets(string kitKey, string fillKey)
    {
        foreach (string name in new[] { "repair_kit_single_job_greedy_suboptimal", "repair_kit_most_used_first_fails" })
        {
            RepairKitCase kit = RepairKitCase.Named(name);
            kit.Oracle.Close(kit.Oracle.Expected[fillKey], kit.Problem.Value(kit.Kit(kitKey)));
        }
    }

    [Fact]
    public void Plan_NoMoney_CarriesNothingAndSaysSo()
    {
        VanLoad plan = VanLoadPlanner.Plan(RepairKitCase.Named("repair_kit_most_used_first_fails").Problem.Within(new LoadLimits(0, 0)), LoadEffort.Thorough);
        Assert.Equal(LoadMethod.Empty, plan.Method);
        Assert.Equal(0.20, plan.Value, 12);
        Assert.Equal(0, plan.Gap);
    }

    [Fact]
    public void Plan_OneJobInAll_CarriesItsParts()
    {
        LoadProblem problem = LoadProblemBuilder.Build(
            [new LoadPart("A", 500, 1, 2), new LoadPart("B", 700, 1, 2)],
            [new LoadJob(1, [new PartNeed(0, 1), new PartNeed(1, 2)])], new LoadLimits(1900, 10));
        Assert.Equal([1, 2], VanLoadPlanner.Plan(problem, LoadEffort.Thorough).Quantities);
    }

    [Fact]
    public void Plan_NoPartsAtAll_IsEmpty() =>
        Assert.Empty(VanLoadPlanner.Plan(LoadProblemBuilder.Build([], [], new LoadLimits(100, 1)), LoadEffort.Thorough).Quantities);

    [Fact]
    public void Plan_ChargeAboveWorth_LeavesThePartOff()
    {
        LoadProblem problem = LoadProblemBuilder.Build(
            [new LoadPart("A", 100, 1, 3, [2, 6]), new LoadPart("B", 100, 1, 1, [9])],
            [new LoadJob(5, [new PartNeed(0, 1)]), new LoadJob(5, [new PartNeed(0, 2)]), new LoadJob(8, [new PartNeed(1, 1)])],
            new LoadLimits(1000, 10));
        VanLoad plan = VanLoadPlanner.Plan(problem, LoadEffort.Thorough);
        Assert.Equal([1, 0], plan.Quantities);
        Assert.Equal(3, plan.Value, 9);
    }

    [Fact]
    public void Plan_EqualWorth_TakesTheCheaperThenTheLowerNumber()
    {
        LoadProblem problem = LoadProblemBuilder.Build(
            [new LoadPart("A", 300, 1, 1), new LoadPart("B", 200, 1, 1), new LoadPart("C", 200, 1, 1)],
            [new LoadJob(1, [new PartNeed(0, 1)]), new LoadJob(1, [new PartNeed(1, 1)]), new LoadJob(1, [new PartNeed(2, 1)])],
            new LoadLimits(300, 10));
        Assert.Equal([0, 1, 0], VanLoadPlanner.Plan(problem, LoadEffort.Thorough).Quantities);
    }
}
