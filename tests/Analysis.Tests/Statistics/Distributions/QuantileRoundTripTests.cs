using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Tests.Statistics.Distributions;

public class QuantileRoundTripTests
{
    private static readonly double[] Probabilities = [1e-12, 1e-6, 0.001, 0.025, 0.1, 0.3, 0.5, 0.7, 0.9, 0.975, 0.999, 1 - 1e-9];
    private static readonly double[] Shapes = [0.01, 0.05, 0.1, 0.3, 0.5, 0.9, 1, 1.5, 2, 4.5, 17, 120, 3000, 250000];

    [Fact]
    public void Normal_QuantileThenCdf_ReturnsProbability() =>
        Assert.All(Probabilities, p => Near(p, NormalDistribution.Cdf(NormalDistribution.Quantile(p))));

    [Fact]
    public void Gamma_QuantileThenCdf_ReturnsProbabilityAtEveryShape()
    {
        foreach (double shape in Shapes)
        {
            var gamma = new GammaDistribution(shape, 2.5);
            foreach (double p in Probabilities)
            {
                double x = gamma.Quantile(p);
                if (x > 1e-300)
                {
                    Near(p, gamma.Cdf(x), $"shape {shape} p {p} x {x}");
                }
            }
        }
    }

    [Fact]
    public void Beta_QuantileThenCdf_ReturnsProbabilityAtEveryShape()
    {
        foreach (double a in Shapes)
        {
            foreach (double b in Shapes)
            {
                var beta = new BetaDistribution(a, b);
                foreach (double p in Probabilities)
                {
                    double x = beta.Quantile(p);
                    if (x > 1e-300 && x < 1 - 1e-6)
                    {
                        Near(p, beta.Cdf(x), $"a {a} b {b} p {p} x {x}");
                    }
                }
            }
        }
    }

    [Fact]
    public void Poisson_Quantile_IsSmallestCountThatReachesProbability()
    {
        foreach (double mean in new[] { 0.01, 0.5, 3, 44.4, 900, 123456 })
        {
            var poisson = new PoissonDistribution(mean);
            Assert.All(Probabilities, p => Reaches(p, poisson.Quantile(p), poisson.Cdf));
        }
    }

    [Fact]
    public void NegativeBinomial_Quantile_IsSmallestCountThatReachesProbability()
    {
        foreach (double size in new[] { 0.05, 0.8, 6.5, 300 })
        {
            foreach (double mean in new[] { 0.02, 1.7, 55, 8000 })
            {
                var nb = NegativeBinomialDistribution.FromMean(mean, size);
                Assert.All(Probabilities, p => Reaches(p, nb.Quantile(p), nb.Cdf));
            }
        }
    }

    [Theory]
    [InlineData(0.1, 0.025, 5.8e-17, 0.05e-17)]
    [InlineData(0.1, 0.001, 6.1e-31, 0.05e-31)]
    public void Gamma_SmallShape_KnownQuantile(double shape, double p, double expected, double allowed) =>
        Assert.InRange(new GammaDistribution(shape, 1).Quantile(p), expected - allowed, expected + allowed);

    [Theory]
    [InlineData(0.975, 1.959963984540054)]
    [InlineData(0.025, -1.959963984540054)]
    [InlineData(0.5, 0)]
    [InlineData(1e-10, -6.361340902404056)]
    public void Normal_Quantile_KnownValue(double p, double expected) =>
        Assert.Equal(expected, NormalDistribution.Quantile(p), 1e-14 * Math.Max(1, Math.Abs(expected)) * 10);

    private static void Reaches(double p, long k, Func<long, double> cdf)
    {
        Assert.True(cdf(k) >= p * (1 - 1e-12), $"p {p}: cdf({k}) = {cdf(k)}");
        Assert.True(k == 0 || cdf(k - 1) < p, $"p {p}: cdf({k - 1}) = {cdf(k - 1)} already reaches it");
    }

    private static void Near(double p, double back, string where = "") =>
        Assert.True(Math.Abs(back - p) <= 1e-10 * Math.Max(p, 1e-4), $"{where}: {p:R} came back as {back:R}");
}
