using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class ProgressLineTests
{
    [Fact]
    public void Text_HalfWay_RowsRateAndTimeLeft() =>
        Assert.Equal("jobs.csv: 120,000 rows, 1,000 a second, 2:00 left", ProgressLine.Text(new StageProgress("jobs.csv", 120_000, 50, 100), TimeSpan.FromSeconds(120)));

    [Fact]
    public void For_OutputThatIsNoTerminal_Nobody() =>
        Assert.Null(ProgressLine.For(new PartsSignal.Pipeline.Commands.ProgramIo(TextWriter.Null, TextWriter.Null, TimeProvider.System)));
}
