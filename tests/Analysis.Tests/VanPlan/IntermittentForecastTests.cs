using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class IntermittentForecastTests
{
    private static readonly Oracle Reference = Oracle.Named("croston_sba_tsb");

    [Fact]
    public void Of_ReferenceSeries_EqualsTheReference()
    {
        IntermittentForecast forecast = Forecast(16);
        Reference.Close(Reference.Expected["size"], forecast.Size);
        Reference.Close(Reference.Expected["interval"], forecast.Interval);
        Reference.Close(Reference.Expected["croston"], forecast.Croston);
        Reference.Close(Reference.Expected["sba"], forecast.Sba);
        Reference.Close(Reference.Expected["sbj"], forecast.Sbj);
        Reference.Close(Reference.Expected["tsb_prob"], forecast.TsbProbability);
        Reference.Close(Reference.Expected["tsb"], forecast.Tsb);
    }

    [Fact]
    public void Of_ReferencePath_FollowsTheReferenceFromTheFirstDemandOn()
    {
        for (int periods = 3; periods <= 16; periods++)
        {
            Reference.Close(Reference.Expected["croston_path"]![periods - 1], Forecast(periods).Croston);
        }
    }

    [Fact]
    public void Of_NoDemandEver_IsNull() => Assert.Null(IntermittentForecast.Fit([0, 0, 0], 0.1, 0.1));

    [Fact]
    public void Of_DyingPart_TsbFallsWhereCrostonStays()
    {
        double[] alive = [1, 0, 1, 0, 1];
        IntermittentForecast dead = IntermittentForecast.Fit([.. alive, .. new double[36]], 0.1, 0.1)!;
        Assert.Equal(IntermittentForecast.Fit(alive, 0.1, 0.1)!.Croston, dead.Croston, 12);
        Assert.True(dead.Tsb < 0.02);
    }

    private static IntermittentForecast Forecast(int periods) => IntermittentForecast.Fit(
        [.. Oracle.Numbers(Reference.Inputs["demand"]).Take(periods)],
        (double)Reference.Inputs["alpha"]!, (double)Reference.Inputs["beta"]!)!;
}
