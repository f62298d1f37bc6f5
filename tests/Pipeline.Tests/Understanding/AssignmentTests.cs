using CsCheck;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Understanding;

public sealed class AssignmentTests
{
    [Fact]
    public void Best_FirstComeWouldLose_TakesTheLargerTotal() =>
        Assert.Equal([1, 0], Assignment.Best(new double[,] { { 5, 4 }, { 4.5, 1 } }));

    [Fact]
    public void Best_NothingGains_NothingIsTaken() => Assert.Equal([-1, -1], Assignment.Best(new double[,] { { 0, -1 }, { -2, 0 } }));

    [Fact]
    public void Best_MoreRowsThanColumns_TheBestRowsAreServed() => Assert.Equal([-1, 0, -1], Assignment.Best(new double[,] { { 1 }, { 3 }, { 2 } }));

    [Fact]
    public void Best_AnyGains_NoOtherAssignmentGainsMore() => Gen.Double[-2, 5].Array2D[4, 3].Sample(gain =>
    {
        int[] best = Assignment.Best(gain);
        Assert.Equal(best.Count(c => c >= 0), best.Where(c => c >= 0).Distinct().Count());
        Assert.Equal(Every(gain, 0, []), best.Select((c, r) => c < 0 ? 0 : gain[r, c]).Sum(), 9);
    });

    private static double Every(double[,] gain, int row, HashSet<int> taken)
    {
        if (row == gain.GetLength(0))
        {
            return 0;
        }

        double best = Every(gain, row + 1, taken);
        for (int c = 0; c < gain.GetLength(1); c++)
        {
            if (gain[row, c] > 0 && !taken.Contains(c))
            {
                best = Math.Max(best, gain[row, c] + Every(gain, row + 1, [.. taken, c]));
            }
        }

        return best;
    }
}
