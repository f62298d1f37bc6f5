using PartsSignal.SampleShop.Scoring;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.Tests.Simulation;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class BestOddsTests(LivedArea area)
{
    private readonly Job[] _some = [.. area.Log.Jobs.Where((_, i) => i % 10 == 0)];

    [Fact]
    public void For_AnyCall_SumsToOneAndKnowsTheTruth() =>
        Assert.All(_some, j =>
        {
            (Odds truth, Odds recorded) = BestOdds.For(j);
            Assert.Equal(1, truth.Shares.Sum(s => s.Chance), 1e-9);
            Assert.Equal(1, recorded.Shares.Sum(s => s.Chance), 1e-9);
            Assert.True(truth.Of(j.Unit.Family.Causes[j.TrueCause].Cause.Component) > 0);
        });

    [Theory]
    [InlineData("none")]
    [InlineData("drain_pump")]
    public void For_ManyCalls_ComponentComesAsOftenAsTheOddsSay(string component) => AssertComesAsOften(component);

    [LongTheory]
    [InlineData("control_board")]
    [InlineData("inlet_valve")]
    [InlineData("door_seal")]
    public void For_ManyCalls_OtherComponentComesAsOftenAsTheOddsSay(string component) => AssertComesAsOften(component);

    private void AssertComesAsOften(string component)
    {
        double expected = _some.Sum(j => BestOdds.For(j).True.Of(component));
        int came = _some.Count(j => j.Unit.Family.Causes[j.TrueCause].Cause.Component == component);
        Assert.InRange(came, expected - (4 * Math.Sqrt(expected)), expected + (4 * Math.Sqrt(expected)));
    }

    [Fact]
    public void For_BrandKnownButNothingElse_StillAnswers()
    {
        Job job = _some.First(j => j.Note.ModelTyped.Length == 0 && j.Note.SerialTyped.Length == 0);
        Assert.NotEmpty(BestOdds.For(job).True.Shares);
    }
}
