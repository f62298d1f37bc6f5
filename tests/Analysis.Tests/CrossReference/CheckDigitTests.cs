using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Tests.CrossReference;

public sealed class CheckDigitTests
{
    [Fact]
    public void Gs1_ReferenceBodies_MatchReference()
    {
        Oracle oracle = Oracle.Named("gs1_check_digit");
        int[] expected = Oracle.Wholes(oracle.Expected);
        Assert.Equal(expected, oracle.Inputs["bodies"]!.AsArray().Select(b => CheckDigit.Gs1((string)b!)!.Value));
    }

    [Theory]
    [InlineData("4006381333931", true)]
    [InlineData("4006381333932", false)]
    [InlineData("400638133393A", false)]
    [InlineData("", false)]
    public void IsArticleNumber_Number_Expected(string number, bool expected) => Assert.Equal(expected, CheckDigit.IsArticleNumber(number));
}
