using PartsSignal.Analysis.Callbacks;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Tests.Callbacks;

/// <summary>Which parts come back more often than the rest.</summary>
public sealed class ComponentComparisonTests(ITestOutputHelper output)
{
    private const int Components = 51;

    [Fact]
    public void StandsOut_NoRealDifference_NamesNextToNothing()
    {
        int named = 0, reports = 0;
        const int Worlds = 200;
        for (int w = 0; w < Worlds; w++)
        {
            var random = new Random(w);
            CallbackShare.CallbackCount[] counts = [.. Enumerable.Range(0, Components).Select(c => Count(random, $"c{c}", 20 + c * 7, 0.04))];
            int found = CallbackShare.Create([.. counts, All(counts)], new EffectGate()).Count(s => s.StandsOut);
            named += found;
            reports += found > 0 ? 1 : 0;
        }

        output.WriteLine($"{(double)named / Worlds:0.000} false names a report, at least one in {(double)reports / Worlds:0.000}");
        Assert.InRange(reports, 0, 0.10 * Worlds + 13);
    }

    [Fact]
    public void StandsOut_OneComponentFiveTimesTheRest_IsNamedAndComparedWithoutItself()
    {
        CallbackShare.CallbackCount[] counts = [new(30, "component", "bad", 200, 40, 40, 0), new(30, "component", "a", 400, 16, 16, 0), new(30, "component", "b", 400, 16, 16, 0)];
        IReadOnlyList<CallbackShare> shares = CallbackShare.Create([.. counts, All(counts)], new EffectGate());
        Assert.Equal(["bad"], shares.Where(s => s.StandsOut).Select(s => s.Member));
        Assert.Equal(0.04, shares[0].RestShare!.Value, 12);
        Assert.Equal((null, null), (shares[^1].RestShare, shares[^1].P));
    }

    private static CallbackShare.CallbackCount Count(Random random, string name, int repairs, double share)
    {
        int back = Enumerable.Range(0, repairs).Count(_ => random.NextDouble() < share);
        return new CallbackShare.CallbackCount(30, "component", name, repairs, back, back, 0);
    }

    private static CallbackShare.CallbackCount All(CallbackShare.CallbackCount[] counts) =>
        new(30, "all", "all", counts.Sum(c => c.Repairs), counts.Sum(c => c.Callbacks), counts.Sum(c => c.Returns), 0);
}
