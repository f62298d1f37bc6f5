using System.Text.RegularExpressions;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.World;

public sealed class SerialRuleTests
{
    [Fact]
    public void Write_AnyBuildDay_FitsTheMakersPattern()
    {
        var dice = new Dice(3);
        foreach (Brand brand in Catalog.World.Brands.Where(b => b.Serial.TellsDate))
        {
            for (int day = 0; day < ShopCalendar.AsOf; day += 97)
            {
                Assert.Matches(brand.Serial.Pattern, brand.Serial.Write(day, dice));
            }
        }
    }

    [Fact]
    public void Intervals_LetterThatComesRound_KeepsEveryRound()
    {
        SerialRule rule = Catalog.World.Brands.Single(b => b.Name == "Quenvik").Serial;
        int built = ShopCalendar.Day(2018, 5, 20);
        int month = ShopCalendar.MonthIndex(built);
        Assert.Equal([(month - 120, month - 120), (month, month)], rule.Intervals(built, ShopCalendar.Day(2025, 1, 1)));
    }

    [Fact]
    public void Write_QuenvikSerial_YearLetterMeansTheYearInTheCycle()
    {
        SerialRule rule = Catalog.World.Brands.Single(b => b.Name == "Quenvik").Serial;
        string serial = rule.Write(ShopCalendar.Day(2018, 5, 20), new Dice(4));
        string letter = Regex.Match(serial, rule.Pattern).Groups["year"].Value;
        Assert.Equal((2018 - 2000) % 10, rule.YearLetters.IndexOf(letter, StringComparison.Ordinal));
    }
}
