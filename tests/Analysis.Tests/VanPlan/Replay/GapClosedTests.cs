using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.Analysis.Tests.VanPlan.Replay;

public sealed class GapClosedTests
{
    [Fact]
    public void Share_Reference_EqualsTheReference()
    {
        Oracle oracle = Oracle.Named("share_of_gap_closed");
        oracle.Close(oracle.Expected["gap_closed"], GapShare.From(
            (double)oracle.Inputs["policy"]!, (double)oracle.Inputs["baseline"]!, (double)oracle.Inputs["hindsight"]!));
    }

    [Fact]
    public void Share_HindsightNoBetterThanPlain_IsMissing() => Assert.Null(GapShare.From(0.5, 0.6, 0.6));
}
