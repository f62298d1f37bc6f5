using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

public sealed class DriftTests
{
    [Fact]
    public void Cusum_CountsThatDouble_MatchesReference()
    {
        Oracle oracle = Oracle.Named("poisson_cusum");
        double[] counts = Oracle.Numbers(oracle.Inputs["counts"]);
        double k = PoissonCusum.Reference((double)oracle.Inputs["mu0"]!, (double)oracle.Inputs["mu1"]!);
        oracle.Close(oracle.Expected["k_lucas"], k);
        IReadOnlyList<double> sums = PoissonCusum.Path(counts, [.. counts.Select(_ => k)]);
        oracle.Close(oracle.Expected["cusum"], sums);
        int alarm = sums.TakeWhile(s => s < (double)oracle.Inputs["h"]!).Count();
        Assert.Equal((int)oracle.Expected["first_alarm_index_1based"]! - 1, alarm);
        Assert.Equal(5, PoissonCusum.StartOfRise(sums, alarm));
    }

    [Fact]
    public void RunLength_UsualAndDoubledMean_MatchesReference()
    {
        Oracle oracle = Oracle.Named("poisson_cusum");
        double k = (double)oracle.Inputs["arl_k"]!;
        double h = (double)oracle.Inputs["arl_h"]!;
        oracle.Close(oracle.Expected["arl0_k3_h5"], CusumRunLength.Mean(k, h, 2));
        oracle.Close(oracle.Expected["arl1_k3_h5_mu4"], CusumRunLength.Mean(k, h, 4));
        Assert.Equal(CusumRunLength.Mean(k, h, 2), CusumRunLength.Mean(k, h, 2, steps: 4), tolerance: 1e-6);
    }

    [Fact]
    public void Limit_AskedRunLength_IsTheSmallestThatReachesIt()
    {
        double limit = CusumRunLength.Limit(3, 2, 188);
        Assert.True(CusumRunLength.Mean(3, limit, 2, 2) >= 188);
        Assert.True(CusumRunLength.Mean(3, limit - 0.5, 2, 2) < 188);
    }

    [Fact]
    public void ChangePoint_CountsThatTriple_MatchesReference()
    {
        Oracle oracle = Oracle.Named("poisson_change_point");
        ChangePoint found = ChangePoint.Find(
            [.. Oracle.Numbers(oracle.Inputs["counts"]).Select(c => (c, 1.0))],
            (double)oracle.Inputs["gamma_prior_shape"]!,
            (double)oracle.Inputs["gamma_prior_rate"]!)!;
        Assert.Equal((int)oracle.Expected["posterior_mode"]! - 1, found.LastBefore);
        oracle.Close(oracle.Expected["posterior_tau"], found.Posterior);
        oracle.Close(oracle.Expected["rate_before"], found.RateBefore);
        oracle.Close(oracle.Expected["rate_after"], found.RateAfter);
        oracle.Close(oracle.Expected["log_bayes_factor_change_vs_none"], found.LogBayesFactor);
        oracle.Close(oracle.Expected["llr_2x_max"], found.LikelihoodRatio);
    }

    [Fact]
    public void ChangePoint_OnePeriod_IsNone() => Assert.Null(ChangePoint.Find([(3, 1)]));
}
