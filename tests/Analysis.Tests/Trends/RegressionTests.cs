using CsCheck;
using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

public sealed class RegressionTests
{
    [Fact]
    public void Poisson_TrendSeasonAndOffset_MatchesReference()
    {
        Oracle oracle = Oracle.Named("poisson_trend_glm");
        double[] jobs = Oracle.Numbers(oracle.Inputs["jobs"]);
        double[] counts = Oracle.Numbers(oracle.Inputs["count"]);
        CountModel model = PoissonRegression.Fit([.. counts.Select((c, t) => new CountRow(c, jobs[t], MonthTerms.TrendAndSeason(t)))]);
        CountModel flat = PoissonRegression.Fit([.. counts.Select((c, t) => new CountRow(c, jobs[t], MonthTerms.Season(t)))]);
        oracle.Close(oracle.Expected["coef"], model.Coefficients);
        oracle.Close(oracle.Expected["se"], model.StandardErrors);
        oracle.Close(oracle.Expected["deviance"], model.Deviance);
        oracle.Close(oracle.Expected["pearson_dispersion"], model.Dispersion);
        oracle.Close(oracle.Expected["lr_chisq_trend"], flat.Deviance - model.Deviance);
        oracle.Close(oracle.Expected["p_trend_poisson"], new ChiSquareDistribution(1).UpperTail(flat.Deviance - model.Deviance));
        oracle.Close(oracle.Expected["annual_rate_ratio"], Math.Exp(12 * model.Coefficients[1]));
    }

    [Fact]
    public void NegativeBinomial_Trend_MatchesReference()
    {
        Oracle oracle = Oracle.Named("negative_binomial_glm");
        CountModel model = NegativeBinomialRegression.Fit(
            [.. Oracle.Numbers(oracle.Inputs["count"]).Select((c, t) => new CountRow(c, 1, MonthTerms.Trend(t)))]);
        oracle.Close(oracle.Expected["coef"], model.Coefficients);
        oracle.Close(oracle.Expected["theta"], model.Theta);
        oracle.Close(oracle.Expected["loglik"], model.LogLikelihood);
        oracle.Close(oracle.Expected["se"], model.StandardErrors);
    }

    [Fact]
    public void NegativeBinomial_CountsThatScatterLess_IsThePoissonFit() =>
        Assert.Null(NegativeBinomialRegression.Fit([.. new double[] { 4, 5, 4, 5, 4, 5 }.Select((c, t) => new CountRow(c, 1, MonthTerms.Trend(t)))]).Theta);

    [Fact]
    public void Poisson_EveryCountNought_SaysSo() =>
        Assert.NotNull(PoissonRegression.Fit([.. Enumerable.Range(0, 12).Select(t => new CountRow(0, 1, MonthTerms.Trend(t)))]).Missing);

    [Fact]
    public void Poisson_TermsThatDepend_SaysSo() =>
        Assert.NotNull(PoissonRegression.Fit([.. Enumerable.Range(0, 12).Select(t => new CountRow(3, 1, [1, t, 2 * t]))]).Missing);

    [Fact]
    public void Poisson_AnyCounts_FittedTotalIsTheTotal() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[50, 300]).Array[24, 60].ForAll(rows =>
        {
            CountModel model = PoissonRegression.Fit([.. rows.Select((r, t) => new CountRow(r.Item1, r.Item2, MonthTerms.Season(t)))]);
            Assert.True(model.Missing is not null || Math.Abs(model.Fitted.Sum() - rows.Sum(r => r.Item1)) < 1e-5);
        });
}
