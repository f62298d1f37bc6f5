using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class ComparableAgesTests
{
    [Fact]
    public void EstimateComparable_LoneOldAge_IsLeftOutAndSaid()
    {
        // Nothing else could have been seen at 20, so that age cannot be weighed against the others.
        TruncatedAge[] failures = [.. Enumerable.Range(0, 30).Select(i => new TruncatedAge(1 + i % 10, 0, 11)), new TruncatedAge(20, 5, 21)];
        Assert.NotNull(DoublyTruncated.Estimate(failures).Missing);
        TruncatedDistribution found = DoublyTruncated.EstimateComparable(failures);
        Assert.Equal((null, 1, 10.0), (found.Missing, found.LeftOut, found.Until));
        Assert.Equal(0.5, found.Points.Single(p => p.Age == 5).Share, tolerance: 1e-9);
    }

    [Fact]
    public void EstimateComparable_AllComparable_IsThePlainEstimate()
    {
        TruncatedAge[] failures = [new(1, 0, 9), new(2, 0, 9), new(2, 0, 9), new(5, 0, 9)];
        Assert.Equal(DoublyTruncated.Estimate(failures).Points, DoublyTruncated.EstimateComparable(failures).Points);
    }

    [Fact]
    public void EstimateComparable_HalfWouldHaveToGo_GivesNothing() =>
        Assert.NotNull(DoublyTruncated.EstimateComparable([new(1, 0, 2), new(1.5, 0, 2), new(8, 7, 9), new(8.5, 7, 9)]).Missing);
}
