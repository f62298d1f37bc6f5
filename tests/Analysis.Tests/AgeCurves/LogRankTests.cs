using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class LogRankTests
{
    [Fact]
    public void Compare_TwoFamilies_MatchesReference()
    {
        Oracle oracle = Oracle.Named("logrank_two_families");
        int[] group = Oracle.Wholes(oracle.Inputs["group"]);
        AgeSpan[] spans = Spans.Of(oracle.Inputs);
        LogRankTest test = LogRank.Compare([[.. spans.Where((_, i) => group[i] == 1)], [.. spans.Where((_, i) => group[i] == 2)]]);
        oracle.Close(oracle.Expected["observed"], [.. test.Observed.Select(o => (double)o)]);
        oracle.Close(oracle.Expected["expected"], test.Expected);
        oracle.Close(oracle.Expected["chisq"], test.ChiSquare);
        oracle.Close(oracle.Expected["p"], test.P);
    }

    [Fact]
    public void Compare_GroupsInAnotherOrder_GivesTheSameStatistic()
    {
        AgeSpan[] a = Spans.FromNew([1, 3, 5, 7], [1, 1, 0, 1]);
        AgeSpan[] b = Spans.FromNew([2, 3, 9], [1, 1, 1]);
        AgeSpan[] c = Spans.FromNew([4, 6, 8], [1, 0, 1]);
        Assert.Equal(LogRank.Compare([a, b, c]).ChiSquare!.Value, LogRank.Compare([c, a, b]).ChiSquare!.Value, tolerance: 1e-10);
    }

    [Fact]
    public void Compare_NeverAtRiskTogether_SaysSo()
    {
        LogRankTest test = LogRank.Compare([[new AgeSpan(0, 2, 1)], [new AgeSpan(5, 6, 1)]]);
        Assert.Null(test.P);
        Assert.NotNull(test.Missing);
    }

    // The interval leaves out 1 exactly where the test finds a difference.
    [Theory]
    [InlineData(2.0, 0.05, 1.0)]
    [InlineData(0.5, 0.05, 1.0)]
    [InlineData(2.0, 0.2, 0.693)]
    public void TestBased_LimitNearerToOne_AgreesWithTheTest(double ratio, double p, double nearer)
    {
        (double lower, double upper) = AgeCurveSummary.TestBased(ratio, p)!.Value;
        Assert.Equal(nearer, ratio > 1 ? lower : upper, 3);
        Assert.Equal(ratio * ratio, lower * upper, 9);
    }

    [Fact]
    public void TestBased_NoDifference_HasNone() => Assert.Null(AgeCurveSummary.TestBased(1, 1));
}
