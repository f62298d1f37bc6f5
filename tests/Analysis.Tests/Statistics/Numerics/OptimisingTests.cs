using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Tests.Statistics.Numerics;

public class OptimisingTests
{
    [Fact]
    public void Root_CubicWithOneRealRoot_FindsIt() =>
        Assert.Equal(2.0945514815423265, RootFinder.Find(x => (x * x * x) - (2 * x) - 5, 2, 3)!.Value, 1e-14);

    [Fact]
    public void Root_SameSignAtBothEnds_IsNull() => Assert.Null(RootFinder.Find(x => (x * x) + 1, -1, 1));

    [Fact]
    public void NelderMead_RosenbrockValley_FindsItsMinimum()
    {
        SimplexMinimum found = NelderMead.Search(x => (100 * Math.Pow(x[1] - (x[0] * x[0]), 2)) + Math.Pow(1 - x[0], 2), [-1.2, 1]);
        Assert.True(found.Converged);
        Assert.Equal(1, found.Point[0], 1e-7);
        Assert.Equal(1, found.Point[1], 1e-7);
    }
}
