using System.Text.Json.Nodes;
using CsCheck;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Tests.Statistics.Intervals;

public class ProportionTests
{
    [Fact]
    public void Intervals_OracleCases_Match()
    {
        Oracle oracle = Oracle.Named("proportion_intervals_95");
        foreach (JsonNode? expected in oracle.Expected.AsArray())
        {
            long x = (long)expected!["x"]!, n = (long)expected["n"]!;
            Matches(oracle, expected["wilson"], Proportion.Wilson(x, n));
            Matches(oracle, expected["jeffreys"], Proportion.Jeffreys(x, n));
            Matches(oracle, expected["clopper_pearson"], Proportion.ClopperPearson(x, n));
        }
    }

    [Fact]
    public void Wilson_NoTrials_IsMissingWithReason() => Assert.Equal("no jobs", Proportion.Wilson(0, 0).Missing);

    [Fact]
    public void Wilson_MoreSuccessesThanTrials_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Proportion.Wilson(3, 2));

    [Fact]
    public void Wilson_BadRows_AreNamedAndTheRestHaveShares()
    {
        IReadOnlyList<Estimate> shares = Proportion.Wilson([(3, 12), (-1, 12), (3, 2), (0, 0)]);
        Assert.Equal(
            [null, "row 1: the count of successes is below 0", "row 2: more successes than trials", "no jobs"],
            shares.Select(s => s.Missing));
        Assert.Equal(Proportion.Wilson(3, 12), shares[0]);
    }

    [Fact]
    public void Wilson_AnyCounts_HoldsTheShareAndMirrors()
    {
        Gen.Select(Gen.Int[1, 500], Gen.Double[0, 1]).ForAll((n, share) =>
        {
            int x = (int)(share * n);
            Estimate e = Proportion.Wilson(x, n), mirror = Proportion.Wilson(n - x, n);
            Assert.True(e.Lower <= e.Value && e.Value <= e.Upper && e.Lower >= 0 && e.Upper <= 1);
            Assert.Equal(e.Lower!.Value, 1 - mirror.Upper!.Value, 1e-12);
        });
    }

    private static void Matches(Oracle oracle, JsonNode? interval, Estimate actual)
    {
        oracle.Close(interval![0], actual.Lower);
        oracle.Close(interval[1], actual.Upper);
    }
}
