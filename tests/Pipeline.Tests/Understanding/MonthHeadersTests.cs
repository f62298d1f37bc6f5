using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Understanding;

public sealed class MonthHeadersTests
{
    [Theory]
    [InlineData("JAN96", "1996-01-01", "")]
    [InlineData("Mar 2025", "2025-03-01", "")]
    [InlineData("2025-12", "2025-12-01", "")]
    [InlineData("01/2025", "2025-01-01", "")]
    [InlineData("Bestand März 2025", "2025-03-01", "bestand")]
    [InlineData("stock_août_24", "2024-08-01", "stock")]
    public void Read_HeaderOfAMonth_ItsFirstDayAndTheOtherWords(string header, string day, string stem)
    {
        (DateOnly FirstDay, string Stem)? read = MonthHeaders.Read(header);
        Assert.Equal((DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), stem), read);
    }

    [Theory]
    [InlineData("Part 12")]
    [InlineData("May")]
    [InlineData("Margin 2025")]
    [InlineData("2025")]
    [InlineData("2025-13")]
    [InlineData("Jan 2025 to Feb 2025")]
    public void Read_AnyOtherHeader_Nothing(string header) => Assert.Null(MonthHeaders.Read(header));

    [Fact]
    public void AreMonths_TheSameMonthTwice_No()
    {
        Assert.True(MonthHeaders.AreMonths(["Jan 2025", "Feb 2025", "Mar 2025"]));
        Assert.False(MonthHeaders.AreMonths(["Jan 2025", "2025-01", "Mar 2025"]));
        Assert.False(MonthHeaders.AreMonths(["Jan 2025", "Feb 2025"]));
    }
}
