using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Tests.Core;

public sealed class ProgressLineTests
{
    [Fact]
    public void Text_HalfWay_RowsRateAndTimeLeft() =>
        Assert.Equal("jobs.csv: 120,000 rows, 1,000 a second, 2:00 left", ProgressLine.Text([new StageProgress("jobs.csv", 120_000, 50, 100)], TimeSpan.FromSeconds(120)));

    [Fact]
    public void Text_SeveralFilesOneOfThemNotBegun_AllTogether() =>
        Assert.Equal(
            "3 files: 90,000 rows, 1,500 a second, 3:00 left",
            ProgressLine.Text([new("a.csv", 60_000, 20, 20), new("b.csv", 30_000, 10, 30), new("c.csv", 0, 0, 70)], TimeSpan.FromSeconds(60)));

    // The clock moves on by a tenth of a second each time it is asked, which every report does once.
    [Fact]
    public void Report_FromSeveralThreads_ALineEachThirdTimeAndWipedAtTheEnd()
    {
        using var text = new StringWriter();
        var line = new ProgressLine(text, new SteppingClock());
        Parallel.For(0, 301, i => line.Report(new StageProgress($"{i % 7}.csv", 10, 1, 1)));
        Assert.Equal(100, text.ToString().Count(c => c == '\r'));
        Assert.Contains("7 files: 70 rows, 2 a second", text.ToString(), StringComparison.Ordinal);
        line.Clear();
        Assert.EndsWith(" \r", text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void For_OutputThatIsNoTerminal_Nobody() =>
        Assert.Null(ProgressLine.For(new ProgramIo(TextWriter.Null, TextWriter.Null, TimeProvider.System)));

    private sealed class SteppingClock : TimeProvider
    {
        private long _tenths;

        public override long TimestampFrequency => 10;

        public override long GetTimestamp() => Interlocked.Increment(ref _tenths);
    }
}
