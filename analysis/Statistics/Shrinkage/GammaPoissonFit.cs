using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Shrinkage;

/// <summary>How the common distribution of the groups' rates was come by.</summary>
internal enum PriorBasis
{
    /// <summary>Maximum likelihood over the groups.</summary>
    EmpiricalBayes,

    /// <summary>The groups scatter no more than chance: one rate for all.</summary>
    CompletePooling,

    /// <summary>Too few groups to learn a scatter from: shape 1 around the pooled rate.</summary>
    WeakPrior,
}

/// <summary>
/// Rates that scatter between groups as Gamma(shape, rate), counts that scatter as Poisson within each (Robbins 1956;
/// Clayton &amp; Kaldor 1987). The marginal counts are negative binomial, whose likelihood gives shape and rate.
/// </summary>
/// <param name="Basis">Where the prior comes from.</param>
/// <param name="Prior">The prior; null with complete pooling, where it has no width.</param>
/// <param name="Mean">Its mean: the rate a group without data is given.</param>
/// <param name="LogLikelihood">Marginal log likelihood; null for the weak prior.</param>
internal sealed record GammaPoissonFit(PriorBasis Basis, GammaDistribution? Prior, double Mean, double? LogLikelihood)
{
    /// <summary>Fewest groups with exposure that a scatter is learned from.</summary>
    public const int FewestGroups = 5;

    // ln(shape) beyond this: prior and pooled answer cannot be told apart.
    private const double LargestLogShape = 13;

    /// <summary>Fits the groups; null where there is no exposure at all.</summary>
    /// <param name="groups">The groups.</param>
    /// <param name="tolerance">Error allowed in the logarithms of shape and mean.</param>
    public static GammaPoissonFit? From(IReadOnlyList<CountGroup> groups, double tolerance = 1e-9)
    {
        CountGroup[] used = [.. groups.Where(g => g.Exposure > 0)];
        double events = used.Sum(g => g.Events), exposure = used.Sum(g => g.Exposure);
        if (used.Length == 0)
        {
            return null;
        }

        double pooled = events / exposure;
        if (used.Length < FewestGroups || events == 0)
        {
            double mean = (events + 0.5) / exposure;
            return new GammaPoissonFit(PriorBasis.WeakPrior, new GammaDistribution(1, 1 / mean), mean, null);
        }

        // Slope of the log likelihood in 1/shape at 0: not positive means the maximum lies at shape = infinity.
        double slope = used.Sum(g => Square(g.Events - (pooled * g.Exposure)) - g.Events) / 2;
        if (slope <= 0)
        {
            return Pooled(used, pooled);
        }

        double spread = Math.Max(slope / used.Sum(g => Square(pooled * g.Exposure)), 1e-4);
        SimplexMinimum found = NelderMead.Search(
            x => -LogLikelihoodAt(used, Math.Exp(x[0]), Math.Exp(x[1])), [Math.Log(0.5 / spread), Math.Log(pooled)], tolerance: tolerance);
        if (found.Point[0] > LargestLogShape)
        {
            return Pooled(used, pooled);
        }

        double shape = Math.Exp(found.Point[0]), center = Math.Exp(found.Point[1]);
        return new GammaPoissonFit(PriorBasis.EmpiricalBayes, new GammaDistribution(shape, shape / center), center, -found.Value);
    }

    /// <summary>Marginal log likelihood of all groups at a shape and a mean.</summary>
    internal static double LogLikelihoodAt(IReadOnlyList<CountGroup> groups, double shape, double mean)
    {
        if (!(shape > 1e-8 && shape < 1e12 && mean > 0 && double.IsFinite(mean)))
        {
            return double.NegativeInfinity;
        }

        double sum = 0;
        foreach (CountGroup group in groups)
        {
            sum += NegativeBinomialDistribution.FromMean(mean * group.Exposure, shape).LogPmf(group.Events);
        }

        return sum;
    }

    private static GammaPoissonFit Pooled(CountGroup[] groups, double rate) => new(
        PriorBasis.CompletePooling, null, rate, groups.Sum(g => new PoissonDistribution(rate * g.Exposure).LogPmf(g.Events)));

    private static double Square(double x) => x * x;
}

/// <summary>Events of one group over its exposure.</summary>
/// <param name="Events">0 or more; a whole number, or the number expected where some of the events are known by their chance only.</param>
/// <param name="Exposure">0 or more; with 0 the group says nothing about the others and its answer is the common one.</param>
internal sealed record CountGroup(double Events, double Exposure);
