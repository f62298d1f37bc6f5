using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.World;

public sealed class SeasonTests
{
    [Fact]
    public void Heat_SummerAndWinter_FasterAndSlower()
    {
        Assert.True(Season.Heat.Speed(ShopCalendar.Day(2025, 7, 20)) > 1.3);
        Assert.True(Season.Heat.Speed(ShopCalendar.Day(2025, 1, 20)) < 0.7);
    }

    [Fact]
    public void UsedBy_WholeYears_IsCloseToTheYears()
    {
        double years = Season.Cold.UsedBy(ShopCalendar.Day(2024, 1, 1)) - Season.Cold.UsedBy(ShopCalendar.Day(2014, 1, 1));
        Assert.Equal(10, years, 0.05);
    }

    [Fact]
    public void DayAfter_FlatYear_IsAYearLater() =>
        Assert.InRange(Season.Flat.DayAfter(1000, 1, 1), 1364, 1366);

    [Fact]
    public void DayAfter_FourfoldUse_IsAQuarterOfTheTime() =>
        Assert.InRange(Season.Flat.DayAfter(1000, 4, 4), 1364, 1366);

    [Fact]
    public void DayAfter_BeyondTheLastDay_IsNever() =>
        Assert.Equal(int.MaxValue, Season.Flat.DayAfter(1000, 500, 1));
}
