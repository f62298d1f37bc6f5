using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

public sealed class BuildWindowTests
{
    private static readonly int[] EvenYears = [.. Enumerable.Range(0, 240).Select(i => i / 2)];

    [Fact]
    public void Find_OneBuildMonth_IsNamed()
    {
        BuildWindow? found = BuildWindow.Find([50, 50, 50, 50, 50, 12, 90], EvenYears);
        Assert.Equal((50, 50, 5, 7), (found!.From, found.To, found.Cases, found.Known));
    }

    [Fact]
    public void Find_TwentyBuildMonths_AreNamedFromFirstToLast()
    {
        BuildWindow? found = BuildWindow.Find([.. Enumerable.Range(40, 20), 5, 100], EvenYears);
        Assert.Equal((40, 59, 20), (found!.From, found.To, found.Cases));
    }

    [Fact]
    public void Find_SpreadLikeTheOthers_IsNone() => Assert.Null(BuildWindow.Find([3, 21, 44, 60, 77, 101, 115], EvenYears));

    [Fact]
    public void Find_TwoCases_AreTooFew() => Assert.Null(BuildWindow.Find([50, 50], EvenYears));
}
