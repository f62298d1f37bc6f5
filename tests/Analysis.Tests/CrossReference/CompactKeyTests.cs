using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Tests.CrossReference;

public sealed class CompactKeyTests
{
    [Theory]
    [InlineData("  wx-40 7/a ", "WX407A")]
    [InlineData("００８６", "0086")]
    [InlineData("m²₃", "M23")]
    [InlineData("--", "")]
    [InlineData(null, "")]
    public void Of_RawNumber_KeepsLettersAndDigits(string? raw, string expected) => Assert.Equal(expected, CompactKey.From(raw));

    [Fact]
    public void Confusable_LookAlikes_MeetEachOther() =>
        Assert.Equal(CompactKey.Confusable("WLOI1"), CompactKey.Confusable("W1011"));

    [Fact]
    public void Keys_ReferenceModels_MatchReference()
    {
        Oracle oracle = Oracle.Named("model_key_canonicalisation");
        string[] compact = [.. oracle.Inputs["raw"]!.AsArray().Select(r => CompactKey.From((string)r!))];
        Assert.Equal(oracle.Expected["compact"]!.AsArray().Select(c => (string)c!), compact);
        Assert.Equal(oracle.Expected["skeleton"]!.AsArray().Select(c => (string)c!), compact.Select(CompactKey.Confusable));
    }
}
