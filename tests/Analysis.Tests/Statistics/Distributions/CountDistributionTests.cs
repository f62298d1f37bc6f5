using System.Text.Json.Nodes;
using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Tests.Statistics.Distributions;

public class CountDistributionTests
{
    [Fact]
    public void NegativeBinomial_OracleCase_MatchesQuantilesAndChances()
    {
        Oracle oracle = Oracle.Named("negative_binomial_quantile");
        var nb = NegativeBinomialDistribution.FromMean((double)oracle.Inputs["mean"]!, (double)oracle.Inputs["size"]!);
        oracle.Close(oracle.Expected["quantile"], [.. Oracle.Numbers(oracle.Inputs["prob"]).Select(p => (double)nb.Quantile(p))]);
        oracle.Close(oracle.Expected["pmf_0_5"], [.. Enumerable.Range(0, 6).Select(k => nb.Pmf(k))]);
        oracle.Close(oracle.Expected["cdf_0_5"], [.. Enumerable.Range(0, 6).Select(k => nb.Cdf(k))]);
    }

    [Fact]
    public void NegativeBinomial_PredictiveOracleCase_Matches()
    {
        Oracle oracle = Oracle.Named("gamma_poisson_predictive");
        JsonNode input = oracle.Inputs;
        var rate = new GammaDistribution(
            (double)input["prior_shape"]! + (double)input["total_demand"]!, (double)input["prior_rate"]! + (double)input["periods"]!);
        var nb = NegativeBinomialDistribution.Predictive(rate, (double)input["horizon"]!);
        oracle.Close(oracle.Expected["nb_size"], nb.Size);
        oracle.Close(oracle.Expected["nb_prob"], nb.Prob);
        oracle.Close(oracle.Expected["pmf_0_5"], [.. Enumerable.Range(0, 6).Select(k => nb.Pmf(k))]);
        oracle.Close(oracle.Expected["quantile_90_95_99"], [nb.Quantile(0.9), nb.Quantile(0.95), nb.Quantile(0.99)]);
    }

    [Theory]
    [InlineData(7, 0.3)]
    [InlineData(40, 0.02)]
    [InlineData(500, 0.77)]
    public void Binomial_Chances_AddUpToDistributionFunction(int n, double p)
    {
        var binomial = new BinomialDistribution(n, p);
        double sum = 0;
        for (int k = 0; k <= n; k++)
        {
            sum += binomial.Pmf(k);
            Assert.Equal(sum, binomial.Cdf(k), 1e-12);
            Assert.Equal(1, binomial.Cdf(k) + binomial.UpperTail(k), 1e-12);
        }
    }

    [Theory]
    [InlineData(16, 0.47)]
    [InlineData(30, 0.1)]
    [InlineData(9, 0.5)]
    public void Binomial_TwoSidedP_IsSumOfChancesNoLikelier(int n, double p)
    {
        var binomial = new BinomialDistribution(n, p);
        for (int x = 0; x <= n; x++)
        {
            double limit = binomial.Pmf(x) * (1 + 1e-7);
            double direct = Enumerable.Range(0, n + 1).Select(k => binomial.Pmf(k)).Where(c => c <= limit).Sum();
            Assert.Equal(Math.Min(1, direct), binomial.TwoSidedP(x), 1e-11);
        }
    }

    [Fact]
    public void Poisson_Chances_AddUpToDistributionFunction()
    {
        var poisson = new PoissonDistribution(3.4);
        double sum = 0;
        for (int k = 0; k < 30; k++)
        {
            sum += poisson.Pmf(k);
            Assert.Equal(sum, poisson.Cdf(k), 1e-14);
        }
    }
}
