using CsCheck;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Tests.CrossReference;

public sealed class StringDistanceTests
{
    private static readonly Gen<string> Short = Gen.String[Gen.Char["AB1"], 0, 6];

    [Fact]
    public void Distances_ReferencePairs_MatchReference()
    {
        Oracle oracle = Oracle.Named("string_distances");
        Assert.All(oracle.Expected.AsArray(), pair =>
        {
            string a = (string)pair!["a"]!, b = (string)pair["b"]!;
            Assert.Equal((int)pair["osa"]!, StringDistance.OptimalAlignment(a, b));
            oracle.Close(pair["jaro"] is { } j ? (double)j : null, StringDistance.Jaro(a, b));
            oracle.Close(pair["jaro_winkler"] is { } w ? (double)w : null, StringDistance.JaroWinkler(a, b));
        });
    }

    [Fact]
    public void Distances_AnyPair_AreSymmetricAndOrdered() => Gen.Select(Short, Short).ForAll((a, b) =>
    {
        int osa = StringDistance.OptimalAlignment(a, b);
        Assert.Equal(osa, StringDistance.OptimalAlignment(b, a));
        Assert.Equal(a == b, osa == 0);
    });

    [Fact]
    public void OptimalAlignment_WithLimit_SaysOneMoreOrTheSame() => Gen.Select(Short, Short, Gen.Int[0, 4]).ForAll((a, b, most) =>
        Assert.Equal(Math.Min(most + 1, StringDistance.OptimalAlignment(a, b)), StringDistance.OptimalAlignment(a, b, most)));

    [Theory]
    [InlineData("leaking", "leaking", 0)]
    [InlineData("lekaing", "leaking", 1)]
    [InlineData("laking", "leaking", 1)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("ca", "abc", 3)]
    public void OptimalAlignment_TwoWords_FewestSlips(string a, string b, int slips)
    {
        Assert.Equal(slips, StringDistance.OptimalAlignment(a, b, 5));
        Assert.Equal(slips, StringDistance.OptimalAlignment(b, a, 5));
    }
}
