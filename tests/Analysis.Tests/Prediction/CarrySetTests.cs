using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.Tests.Prediction;

public sealed class CarrySetTests
{
    [Fact]
    public void Limit_ReferenceScores_GivesTheReferenceSets()
    {
        Oracle oracle = Oracle.Named("conformal_lac");
        double[] scores = Oracle.Numbers(oracle.Inputs["calibration_scores"]), odds = Oracle.Numbers(oracle.Inputs["new_prob"]);
        double[] alphas = Oracle.Numbers(oracle.Inputs["alphas"]);
        Assert.Equal(Oracle.Wholes(oracle.Expected["k"]), alphas.Select(a => CarrySet.Place(scores.Length, a)));
        oracle.Close(oracle.Expected["qhat"]![0], CarrySet.Limit(scores, alphas[0]));
        oracle.Close(oracle.Expected["qhat"]![1], CarrySet.Limit(scores, alphas[1]));
        Assert.Null(CarrySet.Limit(scores, alphas[2]));
        Assert.Equal(Oracle.Wholes(oracle.Expected["set_alpha_0_2_label_indices"]), CarrySet.Members(odds, CarrySet.Limit(scores, 0.2)));
        Assert.Equal(Oracle.Wholes(oracle.Expected["set_alpha_0_1_label_indices"]), CarrySet.Members(odds, CarrySet.Limit(scores, 0.1)));
        Assert.Equal(4, CarrySet.Members(odds, CarrySet.Limit(scores, 0.04)).Count);
    }

    [Fact]
    public void Fit_CallsLikeTheCalibration_AreCoveredAsPromised()
    {
        var random = new Random(5);
        Forecast Draw()
        {
            double sharp = random.NextDouble() * 0.6 + 0.3;
            double[] odds = [sharp, (1 - sharp) * 0.7, (1 - sharp) * 0.3];
            double u = random.NextDouble();
            int truth = u < odds[0] ? 0 : u < odds[0] + odds[1] ? 1 : 2;
            return new Forecast("J", new DateOnly(2024, 1, 1), random.Next(2) == 0 ? "washer" : "dryer", "no_fill", odds, truth);
        }

        CarryLimits limits = CarryLimits.Fit([.. Enumerable.Range(0, 2000).Select(_ => Draw())], 0.8);
        Assert.Equal(["dryer", "washer"], limits.ByType.Keys.Order());
        Assert.InRange(Enumerable.Range(0, 4000).Select(_ => Draw()).Average(f => limits.Covers(f) ? 1.0 : 0.0), 0.77, 0.83);
    }

    [Fact]
    public void Fit_FewCallsOfAType_UsesTheLimitOfAll()
    {
        Forecast[] forecasts = [.. Enumerable.Range(0, CarryLimits.LeastCallsPerType - 1).Select(i => new Forecast("J", new DateOnly(2024, 1, 1), "range", "leak", [0.5, 0.5], i % 2))];
        CarryLimits limits = CarryLimits.Fit(forecasts, 0.8);
        Assert.Empty(limits.ByType);
        Assert.Equal(0.5, limits.For("range"));
    }

    [Fact]
    public void Covers_NeedNeverSeen_IsNotCovered() =>
        Assert.False(CarryLimits.Fit([], 0.95).Covers(new Forecast("J", new DateOnly(2024, 1, 1), "range", "leak", [1], -1)));
}
