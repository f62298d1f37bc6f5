using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.Tests.Prediction;

public sealed class CalibrationTests
{
    [Fact]
    public void Fit_ReferenceForecasts_FindsTheTemperature()
    {
        Oracle oracle = Oracle.Named("temperature_scaling");
        Forecast[] forecasts = ScoresTests.Forecasts(oracle);
        double temperature = TemperatureScaling.Fit(forecasts);
        oracle.Close(oracle.Expected["temperature"], temperature);
        Forecast[] after = [.. forecasts.Select(f => f with { Odds = TemperatureScaling.Apply(f.Odds, temperature) })];
        oracle.Close(oracle.Expected["log_loss_before"], Scores.From(forecasts).LogLoss);
        oracle.Close(oracle.Expected["log_loss_after"], Scores.From(after).LogLoss);
        oracle.Close(oracle.Expected["first_row_after"], after[0].Odds);
    }

    [Fact]
    public void Fit_NothingToLearnFrom_LeavesTheOddsAlone() => Assert.Equal(1, TemperatureScaling.Fit([]));

    [Fact]
    public void Apply_AnyTemperature_KeepsTheOrderAndTheSum()
    {
        double[] scaled = TemperatureScaling.Apply([0.5, 0.3, 0.2], 2.5);
        Assert.Equal(1, scaled.Sum(), 12);
        Assert.True(scaled[0] > scaled[1] && scaled[1] > scaled[2] && scaled[0] < 0.5);
    }
}
