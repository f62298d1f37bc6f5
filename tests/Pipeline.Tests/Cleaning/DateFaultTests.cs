using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Tests.Cleaning;

public sealed class DateFaultTests
{
    [Theory]
    [InlineData("31.02.2024", "DayFirst", "the calendar has no such day")]
    [InlineData("02/30/24", "MonthFirst", "the calendar has no such day")]
    [InlineData("24-02-31", "YearFirst", "the calendar has no such day")]
    [InlineData("45.13.2024", "DayFirst", "the calendar has no such day")]
    [InlineData("12/25/2024", "DayFirst", "the date is not in the file's order, which is day first")]
    [InlineData("25/12/2024", "MonthFirst", "the date is not in the file's order, which is month first")]
    [InlineData("soon", "DayFirst", "there is no date in it")]
    [InlineData("call at 9", "DayFirst", "it is not written as a date")]
    public void Explain_NoDay_NamesTheLikelyCause(string cell, string orderName, string what)
    {
        DateOrder order = Enum.Parse<DateOrder>(orderName);
        Assert.False(DateText.TryDay(cell, order, out _));
        Assert.Equal(what, DateFault.Explain(cell, order).What);
    }
}
