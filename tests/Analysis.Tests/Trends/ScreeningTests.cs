using System.Text.Json.Nodes;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

public sealed class ScreeningTests
{
    [Fact]
    public void PredictiveTail_ShortBaseline_MatchesReference()
    {
        Oracle oracle = Oracle.Named("monthly_alarm_predictive_p");
        JsonNode inputs = oracle.Inputs;
        Assert.Equal(PredictiveTail.PriorShape, (double)inputs["prior_shape"]!);
        Assert.Equal(PredictiveTail.PriorRate, (double)inputs["prior_rate"]!);
        var tail = new PredictiveTail(new Baseline((double)inputs["baseline_events"]!, (double)inputs["baseline_exposure"]!), (double)inputs["current_exposure"]!);
        long count = (long)inputs["current_count"]!;
        oracle.Close(oracle.Expected["p_upper"], tail.AtLeast(count));
        oracle.Close(oracle.Expected["p_mid"], tail.MidP(count));
        oracle.Close(oracle.Expected["expected"], tail.Expected);
        Assert.Equal((long)oracle.Expected["alarm_limit_smallest_count_with_p_le_alpha"]!, tail.Limit((double)inputs["alpha"]!));
    }

    [Fact]
    public void PredictiveTail_MonthsThatScatter_NeedMore()
    {
        var plain = new PredictiveTail(new Baseline(30, 24), 1);
        var scattered = new PredictiveTail(new Baseline(30, 24, Scatter: 2), 1);
        Assert.Equal(plain.Expected, scattered.Expected);
        Assert.True(scattered.Limit(0.01) > plain.Limit(0.01));
    }

    [Fact]
    public void PredictiveTail_NothingInTheBaseline_StillGivesAChance()
    {
        var tail = new PredictiveTail(new Baseline(0, 24), 1);
        Assert.InRange(tail.MidP(3), 1e-9, 0.01);
        Assert.Equal(1, tail.AtLeast(0));
    }

    [Fact]
    public void AlarmLimit_KnownMeans_MatchesReference()
    {
        Oracle oracle = Oracle.Named("poisson_alarm_limits_alpha_0_01");
        foreach (JsonNode? expected in oracle.Expected.AsArray())
        {
            double mean = (double)expected!["mu"]!;
            AlarmLimit limit = KnownMean.Limit(mean, (double)oracle.Inputs["alpha"]!);
            Assert.Equal((long)expected["limit"]!, limit.Limit);
            oracle.Close(expected["size"], limit.Size);
            oracle.Close(expected["power_x2"], KnownMean.Power(limit, 2 * mean));
            oracle.Close(expected["power_x3"], KnownMean.Power(limit, 3 * mean));
            Assert.Equal(0.8, KnownMean.Power(limit, mean * limit.DetectableRatio(mean)!.Value), tolerance: 1e-9);
        }
    }

    [Fact]
    public void Farrington_MonthBeyondPastYears_MatchesReference()
    {
        Oracle oracle = Oracle.Named("farrington_flexible_monthly");
        double[] counts = Oracle.Numbers(oracle.Inputs["counts"]);
        FarringtonResult found = FarringtonFlexible.Compare(counts);
        oracle.Close(oracle.Expected["upperbound_nbPlugin"], found.Upper);
        oracle.Close(oracle.Expected["expected"], found.Expected);
        oracle.Close(oracle.Expected["phi"], found.Scatter);
        Assert.Equal((int)oracle.Expected["alarm_nbPlugin"]! == 1, found.Alarm);

        // The reference's score takes the expected count on the log scale beside counts on their own.
        double log = Math.Log(found.Expected!.Value);
        oracle.Close(oracle.Expected["score"], (counts[^1] - log) / (found.Upper!.Value - log));
    }

    [Fact]
    public void FarringtonPowerLimit_ReferenceErrorOfTheMean_MatchesReference()
    {
        // The reference loses its working weights on the way and takes the dispersion of relative residuals; with that
        // one its limit follows. With Pearson's dispersion, used here, the limit is 13.264043013.
        Oracle oracle = Oracle.Named("farrington_flexible_monthly");
        double[] counts = Oracle.Numbers(oracle.Inputs["counts"]);
        CountRow[] rows = [.. new[] { 14, 15, 16, 26, 27, 28, 38, 39, 40 }.Select(m => new CountRow(counts[m], 1, MonthTerms.Trend(m)))];
        CountModel model = PoissonRegression.Fit(rows);
        double mean = model.Predict(MonthTerms.Trend(51), 1);
        double relative = rows.Zip(model.Fitted, (r, m) => (r.Count - m) * (r.Count - m) / (m * m)).Sum() / 7;
        double error = mean * model.LogError(MonthTerms.Trend(51));
        oracle.Close(oracle.Expected["upperbound_delta"], FarringtonFlexible.PowerLimit(mean, 1, error * Math.Sqrt(relative), 0.01));
        Assert.Equal(13.264043013, FarringtonFlexible.Compare(counts).UpperByPower!.Value, tolerance: 1e-8);
    }

    [Fact]
    public void Farrington_TwoYearsOnly_SaysSo() => Assert.NotNull(FarringtonFlexible.Compare(new double[30]).Missing);

    [Fact]
    public void Farrington_NothingEver_SaysSo() => Assert.NotNull(FarringtonFlexible.Compare(new double[52]).Missing);
}
