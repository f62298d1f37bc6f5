using PartsSignal.Analysis.VanPlan.Evidence;

namespace PartsSignal.Analysis.Tests.VanPlan.Evidence;

public sealed class GapClosedTests
{
    [Fact]
    public void Share_Reference_EqualsTheReference()
    {
        Oracle oracle = Oracle.Named("share_of_gap_closed");
        oracle.Close(oracle.Expected["gap_closed"], GapClosed.Share(
            (double)oracle.Inputs["policy"]!, (double)oracle.Inputs["baseline"]!, (double)oracle.Inputs["hindsight"]!));
    }

    [Fact]
    public void Share_HindsightNoBetterThanPlain_IsMissing() => Assert.Null(GapClosed.Share(0.5, 0.6, 0.6));
}
