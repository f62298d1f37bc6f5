using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Tests.Statistics.Distributions;

public sealed class HypergeometricSumTests
{
    // Fisher's tea tasting: 8 cups, 4 with milk first, 4 named. P(3 or more right) = (16 + 1) / 70.
    [Theory]
    [InlineData(4, 1.0 / 70)]
    [InlineData(3, 17.0 / 70)]
    [InlineData(0, 1)]
    [InlineData(5, 0)]
    public void AtLeast_OneStratum_IsFishersExactTest(int observed, double expected) =>
        Assert.Equal(expected, HypergeometricSum.AtLeast([new FixedTotals(8, 4, 4)], observed), 12);

    // Two strata of 1 in 2: four equally likely outcomes.
    [Theory]
    [InlineData(2, 0.25)]
    [InlineData(1, 0.75)]
    public void AtLeast_TwoStrata_AddsTheCounts(int observed, double expected) =>
        Assert.Equal(expected, HypergeometricSum.AtLeast([new FixedTotals(2, 1, 1), new FixedTotals(2, 1, 1)], observed), 12);

    [Fact]
    public void Mean_AndVariance_AreThoseOfTheChances()
    {
        FixedTotals[] strata = [new FixedTotals(30, 7, 11), new FixedTotals(12, 9, 8), new FixedTotals(5, 0, 2)];
        double[] tail = [.. Enumerable.Range(0, 17).Select(k => HypergeometricSum.AtLeast(strata, k))];
        double mean = Enumerable.Range(1, 16).Sum(k => tail[k]);
        double square = Enumerable.Range(1, 16).Sum(k => (2 * k - 1) * tail[k]);
        Assert.Equal(strata.Sum(s => s.Mean), mean, 10);
        Assert.Equal(strata.Sum(s => s.Variance), square - mean * mean, 10);
    }

    [Fact]
    public void Smallest_IsTheChanceOfTheMostCases() =>
        Assert.Equal(HypergeometricSum.AtLeast([new FixedTotals(30, 4, 11)], 4), HypergeometricSum.Smallest([new FixedTotals(30, 4, 11)]), 12);

    // A usual share learned from few calls is uncertain: 3 of 3 against 0 of 4 is no proof, though 3 of 3 at a share of 1 in 10 would be.
    [Fact]
    public void AtLeast_FewOthers_KeepsTheirUncertainty() => Assert.Equal(1.0 / 35, HypergeometricSum.AtLeast([new FixedTotals(7, 3, 3)], 3), 12);
}
