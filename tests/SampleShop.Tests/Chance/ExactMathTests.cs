using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Tests.Chance;

public sealed class ExactMathTests
{
    [Theory]
    [InlineData(1e-300)]
    [InlineData(0.001)]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(1.4142135623730951)]
    [InlineData(2)]
    [InlineData(123456.789)]
    public void Log_PositiveNumber_AgreesWithTheSystem(double x) =>
        Assert.Equal(Math.Log(x), ExactMath.Log(x), 1e-13 * Math.Max(1, Math.Abs(Math.Log(x))));

    [Theory]
    [InlineData(-700)]
    [InlineData(-1.5)]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(20)]
    [InlineData(300)]
    public void Exp_AnyNumber_AgreesWithTheSystem(double x) =>
        Assert.Equal(1, ExactMath.Exp(x) / Math.Exp(x), 1e-12);

    [Fact]
    public void Log_ZeroOrBelow_IsACallersBug()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ExactMath.Log(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExactMath.Log(-1));
    }
}
