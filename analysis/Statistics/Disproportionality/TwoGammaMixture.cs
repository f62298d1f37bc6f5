using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Optimising;
using PartsSignal.Analysis.Statistics.Special;

namespace PartsSignal.Analysis.Statistics.Disproportionality;

/// <summary>DuMouchel's (1999) prior for ratios of observed to expected: a mixture of two gamma distributions.</summary>
/// <param name="First">First component.</param>
/// <param name="Second">Second component.</param>
/// <param name="ShareOfFirst">Weight of the first, 0 to 1.</param>
public sealed record TwoGammaMixture(GammaDistribution First, GammaDistribution Second, double ShareOfFirst)
{
    /// <summary>His starting values: Gamma(0.2, 0.1) with weight 1/3 and Gamma(2, 4).</summary>
    public static TwoGammaMixture Start { get; } = new(new(0.2, 0.1), new(2, 4), 1.0 / 3);

    /// <summary>What a count says about its ratio.</summary>
    /// <param name="observed">Count, 0 or more.</param>
    /// <param name="expected">Expectation, above 0.</param>
    public TwoGammaPosterior Posterior(long observed, double expected)
    {
        double one = Math.Log(ShareOfFirst) + NegativeBinomialDistribution.Predictive(First, expected).LogPmf(observed);
        double two = Math.Log(1 - ShareOfFirst) + NegativeBinomialDistribution.Predictive(Second, expected).LogPmf(observed);
        double q = 1 / (1 + Math.Exp(two - one));
        return new TwoGammaPosterior(
            new GammaDistribution(First.Shape + observed, First.Rate + expected),
            new GammaDistribution(Second.Shape + observed, Second.Rate + expected),
            q);
    }
}

/// <summary>The mixture after seeing a count.</summary>
/// <param name="First">First component.</param>
/// <param name="Second">Second component.</param>
/// <param name="ShareOfFirst">Weight of the first.</param>
public sealed record TwoGammaPosterior(GammaDistribution First, GammaDistribution Second, double ShareOfFirst)
{
    /// <summary>exp E[ln ratio] (EBGM).</summary>
    public double GeometricMean => Math.Exp((ShareOfFirst * MeanLog(First)) + ((1 - ShareOfFirst) * MeanLog(Second)));

    /// <summary>The ratio below which the posterior has probability p (EB05 at 0.05).</summary>
    public double Quantile(double p)
    {
        double a = First.Quantile(p), b = Second.Quantile(p);
        if (a == b)
        {
            return a;
        }

        // The mixture's quantile lies between those of its parts; the search runs in logs because they can be far apart.
        double lower = Math.Log(Math.Max(Math.Min(a, b), double.MinValue)), upper = Math.Log(Math.Max(a, b));
        lower = double.IsFinite(lower) ? lower : -700;
        return Math.Exp(Root.Find(u => Cdf(Math.Exp(u)) - p, lower, upper) ?? lower);
    }

    private double Cdf(double x) => (ShareOfFirst * First.Cdf(x)) + ((1 - ShareOfFirst) * Second.Cdf(x));

    private static double MeanLog(GammaDistribution gamma) => GammaFunction.Digamma(gamma.Shape) - Math.Log(gamma.Rate);
}
