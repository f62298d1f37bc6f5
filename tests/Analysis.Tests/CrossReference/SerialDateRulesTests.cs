using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Tests.CrossReference;

public sealed class SerialDateRulesTests
{
    private static readonly DateOnly Service = new(2021, 5, 4);
    private static readonly SerialDateRules Lettered = Rules(new("Orvane", "^(?<year>[A-Z])(?<week>[0-9]{2})", "ABCDEFGHIJKL", "2001", "12", null));

    [Fact]
    public void Read_RepeatingLetter_KeepsBothYears()
    {
        Oracle oracle = Oracle.Named("serial_date_code_two_candidates");
        IReadOnlyList<BuildInterval> kept = Lettered.Read("orvane", (string)oracle.Inputs["code"]!, Service).Candidates;
        Assert.Equal(Oracle.Wholes(oracle.Expected["candidate_years"]), kept.Select(k => k.Middle.Year));
        oracle.Close(oracle.Expected["age_years_approx"], [.. kept.Select(k => (Service.DayNumber - k.Middle.DayNumber) / 365.25)]);
    }

    [Theory]
    [InlineData("C00")]
    [InlineData("C54")]
    [InlineData("C60")]
    [InlineData("Z07")]
    [InlineData("1234")]
    public void Read_ImpossibleCode_IsAFault(string serial)
    {
        SerialDateReading reading = Lettered.Read("Orvane", serial, Service);
        Assert.Empty(reading.Candidates);
        Assert.NotNull(reading.Fault);
    }

    [Fact]
    public void Read_Week53_OnlyInLongYears() => // 2009 and 2015 had 53 weeks, 2021 had not
        Assert.Equal([2009, 2015], Rules(new("*", "(?<year>[A-Z])(?<week>[0-9]{2})$", "ABCDEF", "2004", null, null))
            .Read(null, "9-F53", new DateOnly(2022, 1, 1)).Candidates.Select(c => c.Middle.Year));

    [Fact]
    public void Read_ImpossibleCode_NamesTheCodeAndNotTheSerial()
    {
        string fault = Rules(new("*", "^(?<year>[0-9]{2})(?<week>[0-9]{2})-[0-9]{5}$", null, null, null, null)).Read(null, "1460-73519", Service).Fault!;
        Assert.Contains("'1460'", fault, StringComparison.Ordinal);
        Assert.DoesNotContain("73519", fault, StringComparison.Ordinal);
    }

    [Theory] // day 141 of 2014 is in its 21st seven days, and in ISO week 21; day 1 of 2016 is in ISO week 53 of 2015
    [InlineData("1401", "2014-01-01/2014-01-07")]
    [InlineData("1421", "2014-05-21/2014-05-27")]
    [InlineData("1601", "2016-01-01/2016-01-07")]
    [InlineData("1452", "2014-12-24/2014-12-31")]
    [InlineData("1653", "2016-12-30/2016-12-31")]
    [InlineData("1454", null)]
    [InlineData("1400", null)]
    public void Read_WeeksSinceJanuary_CountSevenDaysFromTheFirst(string serial, string? expected) =>
        Assert.Equal(expected, BuildInterval.Write(Rules(new("*", "^(?<year>[0-9]{2})(?<week>[0-9]{2})$", null, null, null, null, "january")).Read(null, serial, Service).Candidates));

    [Theory] // ISO week 1 of 2014 began on December 30, 2013, week 21 on May 19; 2016 had no ISO week 53
    [InlineData("1401", "2013-12-30/2014-01-07")]
    [InlineData("1421", "2014-05-19/2014-05-27")]
    [InlineData("1653", "2016-12-30/2016-12-31")]
    [InlineData("1454", null)]
    public void Read_WeeksOfEitherCount_HoldTheDaysOfBoth(string serial, string? expected) =>
        Assert.Equal(expected, BuildInterval.Write(Rules(new("*", "^(?<year>[0-9]{2})(?<week>[0-9]{2})$", null, null, null, null, "either")).Read(null, serial, Service).Candidates));

    [Theory] // December 29 to 31, 2014, were in week 1 of 2015; January 1 to 3, 2016, in week 53 of 2015
    [InlineData("1401", "2014-01-01/2014-01-05;2014-12-29/2014-12-31")]
    [InlineData("1601", "2016-01-04/2016-01-10")]
    [InlineData("1653", "2016-01-01/2016-01-03")]
    [InlineData("1454", null)]
    public void Read_WeeksBesideTheCalendarYear_MayBeTwoSpans(string serial, string? expected) =>
        Assert.Equal(expected, BuildInterval.Write(Rules(new("*", "^(?<year>[0-9]{2})(?<week>[0-9]{2})$", null, null, null, null, "calendar")).Read(null, serial, Service).Candidates));

    [Fact]
    public void Read_MonthLettersAndYearDigit_GivesMonthsOfEveryDecade() =>
        Assert.Equal("2005-03-01/2005-03-31;2015-03-01/2015-03-31", BuildInterval.Write(
            Rules(new("Quillard", "^[0-9]{3}(?<year>[0-9])(?<month>[A-Z])", null, "1998", null, "ABCDEFGHJKLM")).Read("QUILLARD", "1235C-99", Service).Candidates));

    [Fact]
    public void Read_NoRuleForBrand_IsSilent() => Assert.Equal(SerialDateReading.Silent, Lettered.Read("Other", "C07", Service));

    [Fact]
    public void Create_BadRule_ListsEveryFault()
    {
        Assert.Null(SerialDateRule.Create(new("x", "(?<yaer>[A-Z", "AAB", "20x1", "2", "ABC", "lunar"), out IReadOnlyList<string> faults));
        Assert.Equal(6, faults.Count);
    }

    private static SerialDateRules Rules(SerialDateRuleText text) =>
        new([SerialDateRule.Create(text, out _) ?? throw new ArgumentException("bad rule", nameof(text))]);
}
