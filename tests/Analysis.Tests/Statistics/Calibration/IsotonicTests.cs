using PartsSignal.Analysis.Statistics.Calibration;

namespace PartsSignal.Analysis.Tests.Statistics.Calibration;

public class IsotonicTests
{
    [Fact]
    public void Fit_OracleCase_Matches()
    {
        Oracle oracle = Oracle.Named("isotonic_pava");
        oracle.Close(oracle.Expected["fitted"], Isotonic.Fit(Oracle.Numbers(oracle.Inputs["label"])));
    }

    [Fact]
    public void Fit_WeightedFallingPair_IsTheirWeightedMean() => Assert.Equal([2.5, 2.5], Isotonic.Fit([4, 2], [1, 3]));
}
