using CsCheck;
using PartsSignal.Analysis.CheckOrder;

namespace PartsSignal.Analysis.Tests.CheckOrder;

public sealed class CheckPlannerTests
{
    private static Suspect[] Suspects(Oracle oracle)
    {
        double[] odds = Oracle.Numbers(oracle.Inputs["prob"]), minutes = Oracle.Numbers(oracle.Inputs["cost"]);
        return [.. odds.Select((p, i) => new Suspect($"s{i}", p, minutes[i]))];
    }

    [Fact]
    public void Best_UnrelatedChecks_FollowsMostFoundPerMinute()
    {
        Oracle oracle = Oracle.Named("pc_ordering");
        var problem = new CheckProblem(Suspects(oracle));
        CheckPlan best = CheckPlanner.Best(problem);
        Assert.Equal(Oracle.Wholes(oracle.Expected["order_0based"]), best.Order);
        oracle.Close(oracle.Expected["expected_cost"], best.ExpectedMinutes);
        oracle.Close(oracle.Expected["by_probability_only_cost"], CheckPlanner.LikeliestFirst(problem).ExpectedMinutes);
        oracle.Close(oracle.Expected["by_cheapest_first_cost"], CheckPlanner.CheapestFirst(problem).ExpectedMinutes);
        Assert.Equal(best.Order, RatioRule.Order(problem, []));
    }

    [Fact]
    public void Best_LastSuspectInferred_LeavesOutTheRightOne()
    {
        Oracle oracle = Oracle.Named("pc_ordering");
        var problem = new CheckProblem(Suspects(oracle), inferLast: true);
        CheckPlan best = CheckPlanner.Best(problem);
        Assert.Equal(Oracle.Wholes(oracle.Expected["last_component_inferred_order_0based"]), best.Order);
        oracle.Close(oracle.Expected["last_component_inferred_expected_cost"], best.ExpectedMinutes);
        oracle.Close(oracle.Expected["plain_rule_cost_when_last_inferred"], problem.ExpectedMinutes(RatioRule.Order(problem, [])));
    }

    [Fact]
    public void Best_SharedOpening_PaysForItOnce()
    {
        Oracle oracle = Oracle.Named("pc_ordering_shared_disassembly");
        int[] cluster = Oracle.Wholes(oracle.Inputs["cluster"]);
        Suspect[] suspects = [.. Suspects(oracle).Select((s, i) => cluster[i] == 1 ? s with { Opening = "rear panel" } : s)];
        var problem = new CheckProblem(suspects, new Dictionary<string, double> { ["rear panel"] = 15 });
        CheckPlan best = CheckPlanner.Best(problem);
        Assert.Equal(Oracle.Wholes(oracle.Expected["order_0based"]), best.Order);
        oracle.Close(oracle.Expected["expected_cost"], best.ExpectedMinutes);
        oracle.Close(oracle.Expected["plain_pc_cost"], problem.ExpectedMinutes(Oracle.Wholes(oracle.Expected["plain_pc_order"])));
    }

    [Fact]
    public void Best_RequiredOrders_AreKept()
    {
        Oracle oracle = Oracle.Named("pc_ordering_precedence");
        (int, int)[] pairs = [.. oracle.Inputs["must_precede_0based"]!.AsArray().Select(p => (p![0]!.GetValue<int>(), p[1]!.GetValue<int>()))];
        CheckPlan best = CheckPlanner.Best(new CheckProblem(Suspects(oracle), mustPrecede: pairs));
        Assert.Equal(Oracle.Wholes(oracle.Expected["order_0based"]), best.Order);
        oracle.Close(oracle.Expected["expected_cost"], best.ExpectedMinutes);
        oracle.Close(oracle.Expected["unconstrained_cost"], CheckPlanner.Best(new CheckProblem(Suspects(oracle))).ExpectedMinutes);
    }

    [Fact]
    public void Best_ContradictingRequiredOrders_AreRefused() =>
        Assert.Throws<ArgumentException>(() => CheckPlanner.Best(new CheckProblem([new("a", 0.5, 1), new("b", 0.5, 1)], mustPrecede: [(0, 1), (1, 0)])));

    [Fact]
    public void Best_SafetyCheck_ComesFirstEvenWhereItNeverPays()
    {
        var problem = new CheckProblem([new("valve", 0.9, 1), new("prove it dead", 0, 5) { AlwaysFirst = true }], inferLast: true);
        CheckPlan best = CheckPlanner.Best(problem);
        Assert.Equal([1, 0], best.Order);
        Assert.Equal(5, best.ExpectedMinutes);
    }

    [Fact]
    public void Best_OneSuspectMore_FallsBackToTheRule()
    {
        Suspect[] suspects = [.. Enumerable.Range(0, CheckPlanner.MostExact + 1).Select(i => new Suspect($"s{i}", 0.05, 1 + i % 4))];
        CheckPlan plan = CheckPlanner.Best(new CheckProblem(suspects));
        Assert.False(plan.Exact);
        Assert.Equal(suspects.Length, plan.Order.Distinct().Count());
    }

    [Fact]
    public void Best_AnySmallProblem_IsNoSlowerThanAnyOtherOrder() =>
        Gen.Select(Gen.Double[0.01, 1].Array[5], Gen.Double[0.5, 1].Array[5], Gen.Int[1, 20].Array[5], Gen.Int[0, 2].Array[5], Gen.Bool).ForAll((weights, senses, minutes, groups, infer) =>
        {
            double sum = weights.Sum() * 1.1;
            Suspect[] suspects = [.. weights.Select((w, i) => new Suspect($"s{i}", w / sum, minutes[i]) { Sensitivity = senses[i], Opening = groups[i] == 0 ? null : $"g{groups[i]}" })];
            var problem = new CheckProblem(suspects, new Dictionary<string, double> { ["g1"] = 12, ["g2"] = 4 }, infer);
            double best = CheckPlanner.Best(problem).ExpectedMinutes;
            double lowest = Orders(5).Min(problem.ExpectedMinutes);
            Assert.Equal(lowest, best, 9);
        }, runs: 100);

    [Fact]
    public void BringRule_CostsOfTheShop_GiveTheThreshold()
    {
        Oracle oracle = Oracle.Named("order_part_threshold");
        double wrong = oracle.Inputs["cost_wrong_part"]!.GetValue<double>(), visit = oracle.Inputs["cost_extra_visit"]!.GetValue<double>();
        oracle.Close(oracle.Expected["threshold"], BringRule.Threshold(wrong, visit));
        Assert.Equal(
            oracle.Expected["order_flags"]!.AsArray().Select(f => f!.GetValue<bool>()),
            Oracle.Numbers(oracle.Inputs["posterior"]).Select(q => BringRule.Bring(q, wrong, visit)));
    }

    [Theory]
    [InlineData(1.2, 5, 1)]
    [InlineData(0.5, -1, 1)]
    [InlineData(0.5, 5, 0)]
    public void Problem_NumberOutOfRange_IsRefused(double odds, double minutes, double sensitivity) =>
        Assert.Throws<ArgumentException>(() => new CheckProblem([new("a", odds, minutes) { Sensitivity = sensitivity }]));

    private static IEnumerable<int[]> Orders(int n) =>
        n == 0 ? [[]] : Orders(n - 1).SelectMany(o => Enumerable.Range(0, n).Select(at => (int[])[.. o[..at], n - 1, .. o[at..]]));
}
