using PartsSignal.SampleShop.Scoring;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.Tests.Simulation;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class BestOddsTests(LivedArea area)
{
    private readonly IReadOnlyList<(Job Job, Odds True, Odds Recorded)> _some = area.BestOdds.Value;

    [Fact]
    public void For_AnyCall_SumsToOneAndKnowsTheTruth() =>
        Assert.All(_some, j =>
        {
            Assert.Equal(1, j.True.Shares.Sum(s => s.Chance), 1e-9);
            Assert.Equal(1, j.Recorded.Shares.Sum(s => s.Chance), 1e-9);
            Assert.True(j.True.Of(TrueComponent(j.Job)) > 0);
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
        double expected = _some.Sum(j => j.True.Of(component));
        int came = _some.Count(j => TrueComponent(j.Job) == component);
        Assert.InRange(came, expected - (4 * Math.Sqrt(expected)), expected + (4 * Math.Sqrt(expected)));
    }

    [Fact]
    public void For_BrandKnownButNothingElse_StillAnswers()
    {
        (_, Odds truth, _) = _some.First(j => j.Job.Note.ModelTyped.Length == 0 && j.Job.Note.SerialTyped.Length == 0);
        Assert.NotEmpty(truth.Shares);
    }

    private static string TrueComponent(Job job) => job.Unit.Family.Causes[job.TrueCause].Cause.Component;
}
