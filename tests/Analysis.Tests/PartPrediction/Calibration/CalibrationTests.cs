using PartsSignal.Analysis.PartPrediction.Calibration;
using PartsSignal.Analysis.PartPrediction.Judging;
using PartsSignal.Analysis.Tests.PartPrediction.Judging;

namespace PartsSignal.Analysis.Tests.PartPrediction.Calibration;

public sealed class CalibrationTests
{
    [Fact]
    public void Fit_ReferenceForecasts_FindsTheTemperature()
    {
        Oracle oracle = Oracle.Named("temperature_scaling");
        Forecast[] forecasts = ScoresTests.Forecasts(oracle);
        double temperature = Temperature.Fit(forecasts);
        oracle.Close(oracle.Expected["temperature"], temperature);
        Forecast[] after = [.. forecasts.Select(f => f with { Odds = Temperature.Apply(f.Odds, temperature) })];
        oracle.Close(oracle.Expected["log_loss_before"], Scores.Of(forecasts).LogLoss);
        oracle.Close(oracle.Expected["log_loss_after"], Scores.Of(after).LogLoss);
        oracle.Close(oracle.Expected["first_row_after"], after[0].Odds);
    }

    [Fact]
    public void Fit_NothingToLearnFrom_LeavesTheOddsAlone() => Assert.Equal(1, Temperature.Fit([]));

    [Fact]
    public void Apply_AnyTemperature_KeepsTheOrderAndTheSum()
    {
        double[] scaled = Temperature.Apply([0.5, 0.3, 0.2], 2.5);
        Assert.Equal(1, scaled.Sum(), 12);
        Assert.True(scaled[0] > scaled[1] && scaled[1] > scaled[2] && scaled[0] < 0.5);
    }
}
