using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Tests.Chance;

public sealed class DiceTests
{
    [Fact]
    public void Next_KnownSeed_GivesThePublishedSequence()
    {
        // first outputs of SplitMix64 for seed 1234567, as in the reference implementation
        var dice = new Dice(1234567);
        Assert.Equal(6457827717110365317UL, dice.Next());
        Assert.Equal(3203168211198807973UL, dice.Next());
        Assert.Equal(9817491932198370423UL, dice.Next());
    }

    [Fact]
    public void Weibull_ManyDraws_MeanIsScaleTimesGamma()
    {
        var dice = new Dice(5);
        double mean = Enumerable.Range(0, 200_000).Average(_ => dice.Weibull(2, 10));
        Assert.Equal(8.8623, mean, 0.05);
    }

    [Fact]
    public void Normal_ManyDraws_MeanAndSpread()
    {
        var dice = new Dice(6);
        double[] draws = [.. Enumerable.Range(0, 200_000).Select(_ => dice.Normal())];
        Assert.Equal(0, draws.Average(), 0.01);
        Assert.Equal(1, draws.Average(d => d * d), 0.015);
    }

    [Fact]
    public void Weighted_SharesGiven_DrawnInProportion()
    {
        var dice = new Dice(7);
        int second = Enumerable.Range(0, 100_000).Count(_ => dice.Weighted([1, 3]) == 1);
        Assert.Equal(0.75, second / 100_000.0, 0.01);
    }
}
