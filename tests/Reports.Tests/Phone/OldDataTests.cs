using PartsSignal.Reports.Phone;

namespace PartsSignal.Reports.Tests.Phone;

public sealed class OldDataTests
{
    private static readonly DateOnly Last = new(2026, 6, 28);

    [Theory]
    [InlineData(45, false)]
    [InlineData(46, true)]
    public void Sentence_DataThatEndsSoManyDaysAgo_IsToldWhenOld(int days, bool told) =>
        Assert.Equal(told ? "The files end on June 28, 2026, 46 days ago. Odds, prices and van contents may have changed. Add newer files." : null, OldData.Sentence(Last, Last.AddDays(days), "Add newer files."));

    [Fact]
    public void Sentence_LastDayUnknown_SaysNothing() => Assert.Null(OldData.Sentence(null, Last, "Add newer files."));
}
