using CsCheck;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Tests.Statistics.Intervals;

public class BlockBootstrapTests
{
    // By hand: 0.025 * 99 = 2.475, so the third from either end; 0.025 * 40 = 1, so the second.
    [Theory]
    [InlineData(100, 3, 98)]
    [InlineData(41, 2, 40)]
    [InlineData(1, 1, 1)]
    public void Middle_CountedValues_AreTheOrderStatisticsRoundedOutward(int values, double lower, double upper) =>
        Assert.Equal((lower, upper), BlockBootstrap.Middle([.. Enumerable.Range(1, values).Reverse().Select(v => (double)v)]));

    // One case with the figure 1, or three cases that sum to 1: two draws give 2/2, 2/4 or 2/6.
    [Fact]
    public void Mean_TwoBlocksOfUnequalSize_ReachesFromOneToTheOther()
    {
        (double lower, double upper) = new BlockBootstrap(2, 200, 5).Mean([(1, 1), (1, 3)], 0.5);
        Assert.Equal(1.0 / 3, lower, 15);
        Assert.Equal(1, upper, 15);
    }

    [Fact]
    public void Mean_SampleWithoutCases_CountsAsTheMeanOfAll() =>
        Assert.Equal((0.25, 0.25), new BlockBootstrap(1, 10, 5).Mean([(0, 0)], 0.25));

    [Fact]
    public void Middle_AnyValues_HoldAtLeastNineteenInTwenty() =>
        Gen.Double[-1, 1].Array[1, 300].Sample(values =>
        {
            (double lower, double upper) = BlockBootstrap.Middle([.. values]);
            Assert.True(values.Count(v => v >= lower && v <= upper) >= 0.95 * values.Length);
        });

    // Means of 50 normal blocks: the half width is 1.96 / sqrt(50).
    [Fact]
    public void Mean_ManyNormalBlocks_RecoversTheirStandardError()
    {
        var random = new Random(8);
        (double, double)[] blocks = [.. Enumerable.Range(0, 50).Select(_ => (Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble()), 1.0))];
        double own = blocks.Average(b => b.Item1);
        (double lower, double upper) = new BlockBootstrap(50, 4000, 1).Mean(blocks, own);
        double spread = Math.Sqrt(blocks.Average(b => (b.Item1 - own) * (b.Item1 - own)));
        Assert.Equal(2 * 1.96 * spread / Math.Sqrt(50), upper - lower, 0.05);
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(10, 0)]
    public void Create_NothingToDraw_IsRefused(int blocks, int draws) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new BlockBootstrap(blocks, draws, 1));
}
