using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Tests.Statistics.Numerics;

public class SpecialFunctionsTests
{
    [Theory]
    [InlineData(0.5, 0.5723649429247001)]
    [InlineData(1, 0)]
    [InlineData(5, 3.1780538303479458)]
    [InlineData(1e-8, 18.420680738180209)]
    [InlineData(171, 706.5730622457874)]
    public void LogGamma_KnownArgument_KnownValue(double x, double expected) =>
        Assert.Equal(expected, GammaFunction.Log(x), 1e-13 * Math.Max(1, expected));

    [Fact]
    public void Digamma_AtOne_IsMinusEulersConstant() =>
        Assert.Equal(-0.5772156649015329, GammaFunction.Digamma(1), 1e-14);

    [Fact]
    public void IncompleteGamma_ShapeOne_IsExponential()
    {
        foreach (double x in new[] { 1e-9, 0.3, 1.9, 2.1, 30 })
        {
            Assert.Equal(Math.Exp(-x), IncompleteGamma.Upper(1, x), 1e-14);
        }
    }

    [Fact]
    public void IncompleteGamma_LowerAndUpper_AddToOne()
    {
        foreach (double a in new[] { 0.01, 0.7, 5, 400, 1e6 })
        {
            foreach (double share in new[] { 0.1, 0.9, 1, 1.1, 4 })
            {
                Assert.Equal(1, IncompleteGamma.Lower(a, a * share) + IncompleteGamma.Upper(a, a * share), 1e-12);
            }
        }
    }

    [Fact]
    public void IncompleteBeta_WholeShapes_IsBinomialTail()
    {
        // I_x(2, 3) = 6x^2 - 8x^3 + 3x^4
        foreach (double x in new[] { 0.01, 0.2, 0.5, 0.77 })
        {
            Assert.Equal((6 * x * x) - (8 * x * x * x) + (3 * x * x * x * x), IncompleteBeta.Lower(2, 3, x), 1e-14);
        }
    }

    [Fact]
    public void IncompleteBeta_Mirrored_AddsToOne()
    {
        foreach ((double a, double b, double x) in new[] { (0.02, 0.5, 0.001), (3, 9, 0.4), (5000, 20000, 0.2), (1e5, 2, 0.99999) })
        {
            Assert.Equal(1, IncompleteBeta.Lower(a, b, x, 1 - x) + IncompleteBeta.Lower(b, a, 1 - x, x), 1e-12);
        }
    }

    [Theory]
    [InlineData(0.5, 1.7724538509055159)]
    [InlineData(1, 1)]
    [InlineData(5, 24)]
    [InlineData(20.5, 540624298233507500)]
    public void Value_KnownArguments_AreTheGammaFunction(double x, double expected) =>
        Assert.Equal(1, GammaFunction.Value(x) / expected, 1e-12);
}
