using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class SpellingTests
{
    [Theory]
    [InlineData("leaking", "leaking", 0)]
    [InlineData("lekaing", "leaking", 1)]
    [InlineData("laking", "leaking", 1)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("ca", "abc", 3)]
    public void Slips_TwoWords_FewestSlips(string a, string b, int slips)
    {
        Assert.Equal(slips, Spelling.Slips(a, b, 5));
        Assert.Equal(slips, Spelling.Slips(b, a, 5));
    }

    [Theory]
    [InlineData("daed", "dead", true)]
    [InlineData("deaad", "dead", true)]
    [InlineData("dad", "dead", false)]
    [InlineData("small", "smell", true)]
    [InlineData("bell", "belt", false)]
    public void IsClose_ShortWords_OnlySwapsAndDoubles(string typed, string known, bool close) => Assert.Equal(close, Spelling.IsClose(typed, known));
}
