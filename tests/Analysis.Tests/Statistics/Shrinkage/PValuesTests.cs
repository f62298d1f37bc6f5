using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Tests.Statistics.Shrinkage;

public class PValuesTests
{
    [Fact]
    public void Adjustments_OracleCase_Match()
    {
        Oracle oracle = Oracle.Named("multiplicity_adjustment");
        double[] p = Oracle.Numbers(oracle.Inputs["p"]);
        oracle.Close(oracle.Expected["BH"], PValues.BenjaminiHochberg(p));
        Assert.Equal((int)oracle.Expected["BH_rejected_at_0_05"]!, PValues.BenjaminiHochberg(p).Count(q => q <= 0.05));
    }

    [Fact]
    public void BenjaminiHochberg_OtherOrder_KeepsEachValuesAnswer()
    {
        double[] p = [0.04, 0.001, 0.9, 0.03, 0.03];
        IReadOnlyList<double> forward = PValues.BenjaminiHochberg(p);
        IReadOnlyList<double> back = PValues.BenjaminiHochberg([.. p.Reverse()]);
        Assert.Equal(forward, back.Reverse());
    }

    [Fact]
    public void EffectGate_UnlikelyButSmall_DoesNotPass()
    {
        var gate = new EffectGate();
        Assert.True(gate.Passes(0.05, 1.8, 4));
        Assert.False(gate.Passes(0.05, 1.2, 400));
        Assert.False(gate.Passes(0.05, 9, 2));
        Assert.False(gate.Passes(null, 9, 20));
    }
}
