using PartsSignal.Analysis.Statistics.Trend;

namespace PartsSignal.Analysis.Tests.Statistics.Trend;

public class TrendTests
{
    [Fact]
    public void EventTimes_OracleCase_Match()
    {
        Oracle oracle = Oracle.Named("laplace_and_mil_hdbk_trend");
        double[] times = Oracle.Numbers(oracle.Inputs["event_times"]);
        double end = (double)oracle.Inputs["T"]!;
        TrendTest laplace = EventTimes.Laplace(times, end)!;
        oracle.Close(oracle.Expected["laplace_time_truncated"], laplace.Statistic);
        oracle.Close(oracle.Expected["p_two_sided"], laplace.P);
        oracle.Close(oracle.Expected["laplace_failure_truncated"], EventTimes.LaplaceToLastEvent(times)!.Statistic);
        PowerLaw crow = EventTimes.Crow(times, end)!;
        oracle.Close(oracle.Expected["milhdbk_chi2"], crow.Test.Statistic);
        oracle.Close(oracle.Expected["milhdbk_p_deterioration_lower_tail"], crow.Test.P);
        oracle.Close(oracle.Expected["crow_amsaa_beta_mle"], crow.Beta);
        oracle.Close(oracle.Expected["crow_amsaa_lambda"], crow.Lambda);
    }

    [Fact]
    public void EventTimes_NoEvent_IsNull()
    {
        Assert.Null(EventTimes.Laplace([], 100));
        Assert.Null(EventTimes.Crow([], 100));
        Assert.Null(EventTimes.LaplaceToLastEvent([3]));
    }

    [Fact]
    public void MannKendall_OracleCaseWithTies_Matches()
    {
        Oracle oracle = Oracle.Named("mann_kendall_theil_sen_ties");
        MannKendall trend = MannKendall.Of(Oracle.Numbers(oracle.Inputs["x"]))!;
        oracle.Close(oracle.Expected["S"], trend.S);
        oracle.Close(oracle.Expected["varS"], trend.Variance);
        oracle.Close(oracle.Expected["z"], trend.Z);
        oracle.Close(oracle.Expected["p_two_sided"], trend.P);
        oracle.Close(oracle.Expected["tau_b"], trend.TauB);
        oracle.Close(oracle.Expected["theil_sen_slope"], trend.Slope);
    }

    [Fact]
    public void MannKendall_ConstantSeries_HasNoTrendAndNoTau()
    {
        MannKendall trend = MannKendall.Of([2, 2, 2, 2])!;
        Assert.Equal((0, 1.0), (trend.S, trend.P));
        Assert.Null(trend.TauB);
    }

    [Fact]
    public void UChart_OracleCase_Matches()
    {
        Oracle oracle = Oracle.Named("u_chart_and_laney");
        double[] exposure = Oracle.Numbers(oracle.Inputs["exposure"]);
        UChart chart = UChart.Of([.. Oracle.Wholes(oracle.Inputs["count"]).Select((c, i) => ((long)c, exposure[i]))])!;
        oracle.Close(oracle.Expected["ubar"], chart.Overall);
        oracle.Close(oracle.Expected["sigma_z"], chart.SigmaZ);
        oracle.Close(oracle.Expected["u"], [.. chart.Points.Select(p => p.Rate)]);
        oracle.Close(oracle.Expected["sigma"], [.. chart.Points.Select(p => p.Sigma)]);
        oracle.Close(oracle.Expected["z"], [.. chart.Points.Select(p => p.Z)]);
        oracle.Close(oracle.Expected["ucl_u"], [.. chart.Points.Select(p => p.Upper)]);
        oracle.Close(oracle.Expected["lcl_u"], [.. chart.Points.Select(p => p.Lower)]);
        oracle.Close(oracle.Expected["ucl_laney"], [.. chart.Points.Select(p => p.LaneyUpper!.Value)]);
        oracle.Close(oracle.Expected["lcl_laney"], [.. chart.Points.Select(p => p.LaneyLower!.Value)]);
    }

    [Fact]
    public void UChart_NoEvents_IsNull() => Assert.Null(UChart.Of([(0, 10), (0, 12)]));
}
