using PartsSignal.Analysis.VanPlan.Kits;

namespace PartsSignal.Analysis.Tests.VanPlan.Kits;

public sealed class KitPlannerTests
{
    private static readonly KitEffort Managed = KitEffort.Thorough with { IntegerNodes = 0 };

    [Theory]
    [InlineData("repair_kit_single_job_greedy_suboptimal")]
    [InlineData("repair_kit_most_used_first_fails")]
    public void Plan_ReferenceKit_FindsTheOptimumWithAndWithoutTheIntegerProgram(string name)
    {
        RepairKitCase kit = RepairKitCase.Named(name);
        foreach (KitEffort effort in new[] { KitEffort.Thorough, Managed })
        {
            KitPlan plan = KitPlanner.Plan(kit.Problem, effort);
            Assert.Equal(kit.Kit("optimal_kit"), plan.Quantities);
            kit.Oracle.Close(kit.Oracle.Expected["optimal_fill"], plan.Value);
            Assert.InRange(plan.Bound, plan.Value, plan.Value * 1.0011);
        }
    }

    [Fact]
    public void LagrangianBound_MoneyOnly_EqualsTheLinearRelaxation()
    {
        RepairKitCase kit = RepairKitCase.Named("repair_kit_single_job_greedy_suboptimal");
        kit.Oracle.Close(kit.Oracle.Expected["lp_relaxation_bound"], LagrangianBound.Of(kit.Problem).Bound);
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
        KitPlan plan = KitPlanner.Plan(RepairKitCase.Named("repair_kit_most_used_first_fails").Problem.Within(new KitLimits(0, 0)), KitEffort.Thorough);
        Assert.Equal(KitMethod.Empty, plan.Method);
        Assert.Equal(0.20, plan.Value, 12);
        Assert.Equal(0, plan.Gap);
    }

    [Fact]
    public void Plan_OneJobInAll_CarriesItsParts()
    {
        KitProblem problem = KitProblemBuilder.Build(
            [new KitPart("A", 500, 1, 2), new KitPart("B", 700, 1, 2)],
            [new KitJob(1, [new PartNeed(0, 1), new PartNeed(1, 2)])], new KitLimits(1900, 10));
        Assert.Equal([1, 2], KitPlanner.Plan(problem, KitEffort.Thorough).Quantities);
    }

    [Fact]
    public void Plan_NoPartsAtAll_IsEmpty() =>
        Assert.Empty(KitPlanner.Plan(KitProblemBuilder.Build([], [], new KitLimits(100, 1)), KitEffort.Thorough).Quantities);

    [Fact]
    public void Plan_ChargeAboveWorth_LeavesThePartOff()
    {
        KitProblem problem = KitProblemBuilder.Build(
            [new KitPart("A", 100, 1, 3, [2, 6]), new KitPart("B", 100, 1, 1, [9])],
            [new KitJob(5, [new PartNeed(0, 1)]), new KitJob(5, [new PartNeed(0, 2)]), new KitJob(8, [new PartNeed(1, 1)])],
            new KitLimits(1000, 10));
        KitPlan plan = KitPlanner.Plan(problem, KitEffort.Thorough);
        Assert.Equal([1, 0], plan.Quantities);
        Assert.Equal(3, plan.Value, 9);
    }

    [Fact]
    public void Plan_EqualWorth_TakesTheCheaperThenTheLowerNumber()
    {
        KitProblem problem = KitProblemBuilder.Build(
            [new KitPart("A", 300, 1, 1), new KitPart("B", 200, 1, 1), new KitPart("C", 200, 1, 1)],
            [new KitJob(1, [new PartNeed(0, 1)]), new KitJob(1, [new PartNeed(1, 1)]), new KitJob(1, [new PartNeed(2, 1)])],
            new KitLimits(300, 10));
        Assert.Equal([0, 1, 0], KitPlanner.Plan(problem, KitEffort.Thorough).Quantities);
    }
}
