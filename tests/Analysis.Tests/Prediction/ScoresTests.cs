using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Tests.Prediction;

public sealed class ScoresTests
{
    internal static Forecast[] Forecasts(Oracle oracle)
    {
        double[][] odds = [.. oracle.Inputs["prob"]!.AsArray().Select(Oracle.Numbers)];
        int[] truth = Oracle.Wholes(oracle.Inputs["label"]);
        return [.. odds.Select((p, i) => Of(p, truth[i], i))];
    }

    private static Forecast Of(double[] odds, int truth, int day = 0) =>
        new($"J{day}", new DateOnly(2024, 1, 1).AddDays(day * 7), "washer", "no_fill", odds, truth);

    [Fact]
    public void Of_ReferenceForecasts_GivesTheReferenceFigures()
    {
        Oracle oracle = Oracle.Named("classification_metrics");
        Forecast[] forecasts = Forecasts(oracle);
        Scores scores = Scores.From(forecasts);
        oracle.Close(oracle.Expected["log_loss"], scores.LogLoss);
        oracle.Close(oracle.Expected["brier_sum_over_classes"], scores.Brier);
        oracle.Close(oracle.Expected["top1"], scores.Top1);
        oracle.Close(oracle.Expected["top2"], Scores.TopShare([.. forecasts.Select(f => f.Rank)], 2));
        oracle.Close(oracle.Expected["ece_4_equal_mass"], Reliability.Error(Reliability.Table(forecasts, 4)));
        oracle.Close(oracle.Expected["mrr"], scores.MeanReciprocalRank);
    }

    [Fact]
    public void Of_NeedNeverSeen_IsAMissAndNotLeftOut()
    {
        Scores scores = Scores.From([Of([0.9, 0.1], 0), Of([0.9, 0.1], -1)]);
        Assert.Equal(2, scores.Jobs);
        Assert.Equal(0.5, scores.Top1);
        Assert.Equal(0.5, scores.Top5);
        Assert.Equal(0.5, scores.NeverSeen);
        Assert.Equal((-Math.Log(0.9) - Math.Log(1e-6)) / 2, scores.LogLoss!.Value, 12);
        Assert.Equal((0.02 + 1.82) / 2, scores.Brier!.Value, 12);
    }

    [Fact]
    public void Of_NoForecasts_HasNoFigure() => Assert.Null(Scores.From([]).LogLoss);

    [Fact]
    public void Table_CallsThatDoNotDivide_FillsTheFirstBins()
    {
        var table = Reliability.Table([.. Enumerable.Range(0, 11).Select(i => Of([0.5 + i * 0.04, 0.5 - i * 0.04], i % 2))], 10);
        Assert.Equal(11, table.Sum(b => b.Jobs));
        Assert.Equal(2, table[0].Jobs);
        Assert.All(table.Skip(1), b => Assert.Equal(1, b.Jobs));
    }

    [Fact]
    public void Curve_SureCallsRight_RiskRisesWithCoverage()
    {
        var curve = RiskCoverage.Curve([.. Enumerable.Range(0, 40).Select(i => Of([0.6 + i * 0.01, 0.4 - i * 0.01], i < 20 ? 1 : 0))], 4);
        Assert.Equal([10, 20, 30, 40], curve.Select(p => p.Jobs));
        Assert.Equal([0, 0, 1.0 / 3, 0.5], curve.Select(p => p.Risk));
    }

    [Fact]
    public void Mean_WeeksThatDiffer_HasAnIntervalAroundIt()
    {
        Forecast[] forecasts = [.. Enumerable.Range(0, 30).Select(i => Of([1], 0, i))];
        double[] figure = [.. forecasts.Select((_, i) => (double)(i % 3))];
        Estimate mean = WeekIntervals.Mean(forecasts, figure, 7);
        Assert.Equal(1, mean.Value!.Value, 12);
        Assert.InRange(mean.Lower!.Value, 0.5, 0.99);
        Assert.InRange(mean.Upper!.Value, 1.01, 1.5);
        Assert.Equal(mean, WeekIntervals.Mean(forecasts, figure, 7));
    }

    [Fact]
    public void Mean_OneWeek_SaysWhyThereIsNone() =>
        Assert.Equal("fewer than two weeks of calls", WeekIntervals.Mean([Of([1], 0)], [1], 7).Missing);

    [Theory]
    [InlineData("2024-01-07", "2024-01-08", false)]
    [InlineData("2024-01-08", "2024-01-14", true)]
    public void WeekOf_Monday_BeginsTheWeek(string a, string b, bool same) =>
        Assert.Equal(same, WeekIntervals.WeekOf(DateOnly.Parse(a)) == WeekIntervals.WeekOf(DateOnly.Parse(b)));
}
