using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.Simulation;

public sealed class MistakenTests
{
    private static readonly ModelFamily Family = Catalog.World.Families.Single(f => f.Code == "VE-WX");

    [Fact]
    public void Weights_NoFill_OnlyCausesThatShowSo()
    {
        int valve = Index("inlet_valve");
        double[] weights = Mistaken.Weights(Family, valve, "no_fill");
        Assert.Equal(0, weights[valve]);
        Assert.True(weights[Index("level_switch")] > 0);
        Assert.Equal(0, weights[Index("drum_bearing")]);
    }

    [Fact]
    public void Weights_TruthNeedsNoPart_OnlyTakenForAPart()
    {
        double[] weights = Mistaken.Weights(Family, Index("closed_tap"), "no_fill");
        Assert.Equal(0, weights[Index("clogged_screen")]);
        Assert.True(weights[Index("inlet_valve")] > 0);
    }

    private static int Index(string cause) => Enumerable.Range(0, Family.Causes.Count).First(k => Family.Causes[k].Cause.Name == cause);
}
