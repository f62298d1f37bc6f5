using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class ReverseTimeTests
{
    [Fact]
    public void Estimate_RightTruncatedAges_MatchesReference()
    {
        Oracle oracle = Oracle.Named("right_truncated_age_at_first_failure");
        double[] ages = Oracle.Numbers(oracle.Inputs["age"]);
        double[] latest = Oracle.Numbers(oracle.Inputs["truncation_age"]);
        IReadOnlyList<ConditionalPoint> points = ReverseTime.Estimate([.. ages.Zip(latest, (a, l) => new RightTruncatedAge(a, l))]);
        oracle.Close(oracle.Expected["distinct_age"], [.. points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["n_risk_reverse"], [.. points.Select(p => (double)p.AtRisk)]);
        oracle.Close(oracle.Expected["F_conditional"], [.. points.Select(p => p.Share)]);
    }

    [Fact]
    public void Estimate_NoTruncation_IsTheShareFailedByEachAge() =>
        Assert.Equal([0.25, 0.75, 1], ReverseTime.Estimate([new(1, 9), new(2, 9), new(2, 9), new(5, 9)]).Select(p => p.Share));

    [Fact]
    public void Estimate_FailureBeyondItsTruncation_IsRefused() =>
        Assert.Throws<ArgumentException>(() => ReverseTime.Estimate([new RightTruncatedAge(5, 4)]));
}
