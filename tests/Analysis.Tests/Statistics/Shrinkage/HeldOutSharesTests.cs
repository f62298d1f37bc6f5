using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Statistics.Shrinkage;

/// <summary>
/// Limits from the calls of one time against the shares of a later time, in families that differ: in one component a lot, in
/// the next hardly, and few families are large.
/// </summary>
public sealed class HeldOutSharesTests(ITestOutputHelper output)
{
    private const int Worlds = 150;
    private const int LaterCalls = 20_000;
    private static readonly int[] FamilySizes = [5, 8, 12, 15, 20, 25, 40, 60, 100, 150, 250, 400];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Limits_OfComponentsThatScatterDifferently_HoldTheLaterShare(bool evenSpread)
    {
        var tally = new CoverageTally();
        for (int world = 0; world < Worlds; world++)
        {
            Judge(WorldSeed.Random(world), evenSpread, FamilySizes, tally);
        }

        output.WriteLine(tally.Report);
        tally.Between(0.93, 0.985);
    }

    /// <summary>Where there are three families, nearly nothing is known of how families scatter.</summary>
    [Fact]
    public void Limits_OfThreeFamilies_HoldTheLaterShare()
    {
        var tally = new CoverageTally();
        for (int world = 0; world < 4 * Worlds; world++)
        {
            Judge(WorldSeed.Random(world), false, [10, 40, 200], tally);
        }

        output.WriteLine(tally.Report);
        tally.Between(0.93, 0.995);
    }

    [Fact]
    public void Shrink_FamiliesAlike_PullsTogetherAndApartOtherwise()
    {
        ShareGroup[] alike = [.. Enumerable.Range(0, 10).Select(i => new ShareGroup(i % 2 == 0 ? 4 : 6, 50)), new ShareGroup(4, 10)];
        ShareGroup[] apart = [.. Enumerable.Range(0, 10).Select(i => new ShareGroup(i % 2 == 0 ? 1 : 20, 50)), new ShareGroup(4, 10)];
        double near = BetaBinomialShrinkage.Shrink(alike)[^1].Value!.Value, far = BetaBinomialShrinkage.Shrink(apart)[^1].Value!.Value;
        Assert.InRange(near, 0.09, 0.2);
        Assert.InRange(far, 0.3, 0.4);
    }

    [Fact]
    public void Shrink_NoCalls_IsMissingOrTheCommonShare()
    {
        Assert.Equal("no calls", BetaBinomialShrinkage.Shrink([new ShareGroup(0, 0)])[0].Missing);
        Estimate common = BetaBinomialShrinkage.Shrink([.. Enumerable.Range(0, 8).Select(_ => new ShareGroup(20, 100)), new ShareGroup(0, 0)])[^1];
        Assert.InRange(common.Value!.Value, 0.19, 0.22);
        Assert.True(common.Lower < 0.19 && common.Upper > 0.22);
    }

    [Fact]
    public void Shrink_NothingEverSeen_StaysAboveZeroAndWithinItsLimits()
    {
        Estimate none = BetaBinomialShrinkage.Shrink([new ShareGroup(0, 40), new ShareGroup(0, 3)])[1];
        Assert.True(none is { Lower: >= 0, Value: > 0, Upper: < 0.5 } && none.Lower <= none.Value && none.Value <= none.Upper);
    }

    private static void Judge(Random random, bool evenSpread, int[] sizes, CoverageTally tally)
    {
        (string Component, double Weight, double Scatter)[] components =
            [("much", 2, 0.8), ("some", 2, 0.35), ("hardly", 3, 0.08), ("rare", 0.2, 0.6), ("the rest", 4, 0.2)];
        double[][] shares = [.. sizes.Select(_ => Shares(random, evenSpread, components))];
        long[][] seen = [.. sizes.Select((n, f) => Draw(random, shares[f], n))];
        long[][] later = [.. sizes.Select((_, f) => Draw(random, shares[f], LaterCalls))];
        for (int k = 0; k < components.Length; k++)
        {
            IReadOnlyList<Estimate> limits = BetaBinomialShrinkage.Shrink([.. seen.Select((row, f) => new ShareGroup(row[k], sizes[f]))]);
            for (int f = 0; f < sizes.Length; f++)
            {
                double share = (double)later[f][k] / LaterCalls;
                tally.Add(components[k].Component, share, limits[f].Lower, limits[f].Upper);
                tally.Add(sizes[f] <= 25 ? "small families" : "large families", share, limits[f].Lower, limits[f].Upper);
            }
        }
    }

    private static double[] Shares(Random random, bool evenSpread, (string, double Weight, double Scatter)[] components)
    {
        double[] weights = [.. components.Select(c => c.Weight * (evenSpread
            ? 1 + (Math.Min(0.95, c.Scatter * Math.Sqrt(3)) * ((2 * random.NextDouble()) - 1))
            : Math.Exp((c.Scatter * Normal(random)) - (c.Scatter * c.Scatter / 2))))];
        return [.. weights.Select(w => w / weights.Sum())];
    }

    private static long[] Draw(Random random, double[] shares, int calls)
    {
        long[] counts = new long[shares.Length];
        for (int i = 0; i < calls; i++)
        {
            double u = random.NextDouble();
            int k = 0;
            while (k < shares.Length - 1 && u >= shares[k])
            {
                u -= shares[k++];
            }

            counts[k]++;
        }

        return counts;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
