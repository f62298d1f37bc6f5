using System.Text.Json.Nodes;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Tests.Statistics.Shrinkage;

public class ShrinkageTests
{
    [Fact]
    public void GammaPoisson_OracleCase_Matches()
    {
        Oracle oracle = Oracle.Named("gamma_poisson_empirical_bayes");
        CountGroup[] groups = Groups(oracle.Inputs);
        GammaPoissonFit fit = GammaPoissonFit.From(groups)!;
        Assert.Equal(PriorBasis.EmpiricalBayes, fit.Basis);
        oracle.Close(oracle.Expected["shape_a"], fit.Prior!.Shape);
        oracle.Close(oracle.Expected["rate_b"], fit.Prior.Rate);
        oracle.Close(oracle.Expected["loglik"], fit.LogLikelihood);
        oracle.Close(oracle.Expected["prior_mean"], fit.Mean);
        GammaDistribution[] posterior = [.. groups.Select(g => PlugIn(fit, g))];
        oracle.Close(oracle.Expected["posterior_mean"], [.. posterior.Select(p => p.Mean)]);
        oracle.Close(oracle.Expected["posterior_q025"], [.. posterior.Select(p => p.Quantile(0.025))]);
        oracle.Close(oracle.Expected["posterior_q975"], [.. posterior.Select(p => p.Quantile(0.975))]);
    }

    // The rate of a group as if the prior were known.
    private static GammaDistribution PlugIn(GammaPoissonFit fit, CountGroup group) => new(fit.Prior!.Shape + group.Events, fit.Prior.Rate + group.Exposure);

    [Fact]
    public void GammaPoisson_GroupsAlike_IsCompletePooling()
    {
        Oracle oracle = Oracle.Named("gamma_poisson_no_overdispersion_boundary");
        CountGroup[] four = Groups(oracle.Inputs);
        GammaPoissonFit fit = GammaPoissonFit.From([.. four, new CountGroup(3, 30)])!;
        Assert.Equal((bool)oracle.Expected["complete_pooling"]!, fit.Basis == PriorBasis.CompletePooling);
        oracle.Close(oracle.Expected["pooled_rate"], fit.Mean);
        Assert.Null(fit.Prior);
        Assert.Equal(PriorBasis.WeakPrior, GammaPoissonFit.From(four)!.Basis);
    }

    [Fact]
    public void GammaPoisson_NoExposure_IsMissing()
    {
        Assert.Null(GammaPoissonFit.From([new CountGroup(0, 0)]));
        Assert.Equal("no exposure", GammaPoissonShrinkage.Shrink([new CountGroup(0, 0)])[0].Missing);
    }

    [Fact]
    public void Shrink_OracleGroups_LiesBetweenRawAndMeanAndIsWiderThanPlugIn()
    {
        CountGroup[] groups = Groups(Oracle.Named("gamma_poisson_empirical_bayes").Inputs);
        GammaPoissonFit fit = GammaPoissonFit.From(groups)!;
        IReadOnlyList<Estimate> shrunk = GammaPoissonShrinkage.Shrink(groups);
        double wider = 0;
        for (int i = 0; i < groups.Length; i++)
        {
            GammaDistribution plugIn = PlugIn(fit, groups[i]);
            wider += shrunk[i].Upper!.Value - shrunk[i].Lower!.Value - (plugIn.Quantile(0.975) - plugIn.Quantile(0.025));
            double raw = groups[i].Events / groups[i].Exposure;
            Assert.InRange(shrunk[i].Value!.Value, Math.Min(raw, fit.Mean) - 0.01, Math.Max(raw, fit.Mean) + 0.01);
        }

        Assert.True(wider > 0);
    }

    private static CountGroup[] Groups(JsonNode inputs) =>
        [.. Oracle.Wholes(inputs["counts"]).Zip(Oracle.Numbers(inputs["exposures"]), (n, e) => new CountGroup(n, e))];
}
