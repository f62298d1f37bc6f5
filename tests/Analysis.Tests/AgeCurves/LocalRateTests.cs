using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Tests.Fixtures;
using PartsSignal.Analysis.Tests.Trends;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class LocalRateTests(ITestOutputHelper output)
{
    [Fact]
    public void Of_SameRateAtEveryAge_IsThatRate()
    {
        LocalRate rate = LocalRate.Fit([(-2, 4, 40), (-1, 4, 40), (0, 4, 40), (1, 4, 40), (2, 4, 40)])!;
        Assert.Equal(0.1, rate.Rate, tolerance: 1e-9);

        // Weights 1/3, 2/3, 1, 2/3, 1/3 of 4 failures each: sum of squares over square of the sum.
        Assert.Equal(Math.Sqrt(19.0 / 9 * 4) / 12, rate.LogError, tolerance: 1e-9);
    }

    [Fact]
    public void Of_NewAppliances_AreJudgedByThemselves()
    {
        Assert.Equal([0], LocalRate.Around(0));
        LocalRate rate = LocalRate.Fit([(0, 4, 100)])!;
        Assert.Equal((0.04, 0.5), (Math.Round(rate.Rate, 9), Math.Round(rate.LogError, 9)));
    }

    [Fact]
    public void Of_NoFailure_IsHalfAFailure() => Assert.Equal(0.5 / 60, LocalRate.Fit([(0, 0, 60)])!.Rate, tolerance: 1e-12);

    [Fact]
    public void Of_NobodyWatched_IsMissing() => Assert.Null(LocalRate.Fit([(0, 0, 0), (1, 0, 0)]));

    [SlowFact]
    public void Of_WearOfKnownLife_HoldsTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        const int worlds = 2000;
        const double years = 250;
        var life = new WeibullLife(2, 9);
        double Truth(int age) => life.CumulativeHazard(age + 1) - life.CumulativeHazard(age);
        var tally = new CoverageTally();
        for (int world = 0; world < worlds; world++)
        {
            var random = new Random(world);
            long[] failures = [.. Enumerable.Range(0, 9).Select(a => TrendWorld.Poisson(random, years * Truth(a)))];
            foreach (int age in (int[])[0, 2, 4, 6])
            {
                LocalRate rate = LocalRate.Fit([.. LocalRate.Around(age).Select(d => (d, failures[age + d], years))])!;
                tally.Add($"rate at {age} years", Truth(age), rate.Rate * Math.Exp(-Interval95.Z * rate.LogError), rate.Rate * Math.Exp(Interval95.Z * rate.LogError));
            }
        }

        output.WriteLine(tally.Report);
        tally.Between(0.93, 0.97);
    }
}
