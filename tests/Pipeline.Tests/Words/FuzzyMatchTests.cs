using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class FuzzyMatchTests
{
    [Theory]
    [InlineData("daed", "dead", true)]
    [InlineData("deaad", "dead", true)]
    [InlineData("dad", "dead", false)]
    [InlineData("small", "smell", true)]
    [InlineData("bell", "belt", false)]
    [InlineData("", "washer", false)]
    public void IsClose_ShortWords_OnlySwapsAndDoubles(string typed, string known, bool close) => Assert.Equal(close, FuzzyMatch.IsClose(typed, known));
}
