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
}
