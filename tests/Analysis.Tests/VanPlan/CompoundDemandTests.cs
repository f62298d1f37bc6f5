using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class CompoundDemandTests
{
    [Fact]
    public void Pmf_OnePieceEach_IsTheNegativeBinomial()
    {
        double[] pmf = CompoundDemand.Pmf(1.7, 0.8, [1], 6);
        var reference = NegativeBinomialDistribution.FromMean(1.7, 0.8);
        for (int k = 0; k <= 6; k++)
        {
            Assert.Equal(reference.Pmf(k), pmf[k], 12);
        }
    }

    [Fact]
    public void Pmf_AlwaysTwoPieces_HasNoOddCounts()
    {
        double[] pmf = CompoundDemand.Pmf(0.6, 3, [0, 1], 7);
        var jobs = NegativeBinomialDistribution.FromMean(0.6, 3);
        for (int k = 0; k <= 7; k++)
        {
            Assert.Equal(k % 2 == 0 ? jobs.Pmf(k / 2) : 0, pmf[k], 12);
        }
    }

    [Fact]
    public void Pmf_NoJobs_IsCertainlyNothing() => Assert.Equal([1, 0, 0], CompoundDemand.Pmf(0, 2, [1], 2));
}
