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
