using PartsSignal.SampleShop.Scoring;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class LifeTablesTests
{
    [Fact]
    public void Rate_CauseWithoutPart_IsOneOverItsScale()
    {
        ModelFamily family = Catalog.World.Families[0];
        int tap = Index(family, "closed_tap");
        Assert.Equal(1 / family.Causes[tap].ScaleYears, LifeTables.Rate(family, tap, 0, 7), 1e-12);
    }

    [Fact]
    public void Rate_LongAfter_IsOneOverTheMeanLife()
    {
        // renewal theorem: mean of a Weibull of shape 3 is scale times 0.89298
        ModelFamily family = Catalog.World.Families.First(f => f.Causes.Any(c => c.Cause.Name == "drive_belt"));
        int belt = Index(family, "drive_belt");
        Assert.Equal(1 / (0.89298 * family.Causes[belt].ScaleYears), LifeTables.Rate(family, belt, 0, 95), 0.002);
    }

    [Fact]
    public void Rate_YoungWearPart_IsTheWeibullHazard()
    {
        ModelFamily family = Catalog.World.Families.First(f => f.Causes.Any(c => c.Cause.Name == "drum_bearing"));
        int bearing = Index(family, "drum_bearing");
        double scale = family.Causes[bearing].ScaleYears;
        double hazard = 3.5 / scale * Math.Pow(4 / scale, 2.5);
        Assert.Equal(hazard, LifeTables.Rate(family, bearing, 0, 4), hazard * 0.05);
    }

    [Fact]
    public void Rate_BadBatch_IsFarAboveItsNeighbours()
    {
        ModelFamily family = Catalog.World.Families.Single(f => f.Code == Faults.BatchFamily);
        int valve = Index(family, Faults.BatchComponent);
        double bad = LifeTables.Rate(family, valve, Faults.BatchFirst, 0.9);
        Assert.True(bad > 10 * LifeTables.Rate(family, valve, Faults.BatchFirst - 1, 0.9));
    }

    private static int Index(ModelFamily family, string cause) =>
        Enumerable.Range(0, family.Causes.Count).First(k => family.Causes[k].Cause.Name == cause);
}
