using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Tests.Rates;

public sealed class AgeContrastTests
{
    private const int Worlds = 400;

    // An ice maker with 28, 18 and 19 failures per 100 unit-years in bands of overlapping intervals has no peak.
    [Fact]
    public void Find_OverlappingBars_NamesNoPeak() =>
        Assert.NotEqual(AgePatternKind.Peak, AgeContrast.Find([new(9, 50), new(14, 50), new(9, 50), new(8, 50)]).Kind);

    [Fact]
    public void Find_OneBandFarAboveTheOthers_IsThePeak() => Assert.Equal((AgePatternKind.Peak, 2), AgeContrast.Find([new(5, 100), new(6, 100), new(40, 100), new(7, 100)]));

    [Fact]
    public void Find_SteadyRise_IsNamedAsTrend() => Assert.Equal(AgePatternKind.Rises, AgeContrast.Find([new(4, 100), new(9, 100), new(14, 100), new(20, 100), new(24, 100)]).Kind);

    [Fact]
    public void Find_SteadyFall_IsNamedAsTrend() => Assert.Equal(AgePatternKind.Falls, AgeContrast.Find([new(24, 100), new(18, 100), new(12, 100), new(8, 100)]).Kind);

    [Fact]
    public void Find_OneRateAtEveryAge_IsSeldomNamedOtherwise()
    {
        var random = new Random(3);
        int named = 0;
        for (int w = 0; w < Worlds; w++)
        {
            named += AgeContrast.Find([.. Enumerable.Range(0, 6).Select(i => new BandCount(Poisson(random, 4 + 3 * i), 20 + 15 * i))]).Kind == AgePatternKind.NoDifference ? 0 : 1;
        }

        Assert.InRange(named, 0, 0.1 * Worlds);
    }

    private static long Poisson(Random random, double mean) => new PoissonDistribution(mean).Quantile(random.NextDouble());
}
