using PartsSignal.Analysis.CheckOrder;

namespace PartsSignal.Analysis.Tests.CheckOrder;

public sealed class CallChecksTests
{
    private static readonly CheckTable Table = new(
        [
            new ComponentCheck { Component = "safety", What = "the washer's own", ApplianceTypes = ["washer"], Minutes = 1, First = true },
            new ComponentCheck { Component = "safety", What = "for every type", Minutes = 1, First = true, Caution = "Prove it dead." },
            new ComponentCheck { Component = "lamp", What = "lamp", Minutes = 2 },
        ],
        []);

    [Fact]
    public void Plan_ComponentOfTheShopsOwn_IsCheckedLikeAnyOther()
    {
        var any = new ComponentCheck { Component = ComponentCheck.AnyComponent, What = "{component}: look at it", Minutes = 5 };
        CallCheckPlan plan = CallChecks.Plan(Table with { Checks = [.. Table.Checks, any] }, "other", "no_start", [("drain_motor", 0.6), ("lamp", 0.3), ("none", 0.1)])!;
        Assert.Equal(["Drain motor: look at it", "for every type", "lamp"], plan.Steps.Select(s => s.Check.What).Order(StringComparer.Ordinal));
        Assert.Equal(0.6, plan.Steps.Single(s => s.Check.Component == "drain_motor").Odds);
    }

    [Theory]
    [InlineData("washer", "the washer's own")]
    [InlineData("other", "for every type")]
    [InlineData("unknown", "for every type")]
    public void Plan_TypeWithOrWithoutASafetyCheckOfItsOwn_BeginsWithExactlyOne(string type, string what)
    {
        CallCheckPlan plan = CallChecks.Plan(Table, type, "no_start", [("lamp", 0.6)])!;
        Assert.Equal([what, "lamp"], plan.Steps.Select(s => s.Check.What));
    }
}
