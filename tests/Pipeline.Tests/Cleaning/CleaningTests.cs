using System.Globalization;
using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Tests.Cleaning;

public sealed class CleaningTests
{
    [Theory]
    [InlineData("2026-08-03", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("2026/8/3", DateOrder.MonthFirst, "2026-08-03")]
    [InlineData("20260803", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("03/08/2026", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("03/08/2026", DateOrder.MonthFirst, "2026-03-08")]
    [InlineData("3.8.26", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("26-08-03", DateOrder.YearFirst, "2026-08-03")]
    [InlineData("3 Aug 2026", DateOrder.MonthFirst, "2026-08-03")]
    [InlineData("3-Aug-26", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("3rd August 2026", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("Aug 3, 2026", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("September 3 2026", DateOrder.DayFirst, "2026-09-03")]
    [InlineData("Mon, 3 Aug 2026", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("Di 02.01.2024", DateOrder.DayFirst, "2024-01-02")]
    [InlineData("8. J\u00e4n 2024", DateOrder.DayFirst, "2024-01-08")]
    [InlineData("mar. 02/01/2024", DateOrder.DayFirst, "2024-01-02")]
    [InlineData("mar 2 2024", DateOrder.DayFirst, "2024-03-02")]
    [InlineData("1er f\u00e9vr. 2024", DateOrder.DayFirst, "2024-02-01")]
    [InlineData("3 de mar\u00e7o de 2024", DateOrder.DayFirst, "2024-03-03")]
    [InlineData("vr 5 mrt 2024", DateOrder.DayFirst, "2024-03-05")]
    [InlineData("5 pa\u017adziernika 2024", DateOrder.DayFirst, "2024-10-05")]
    [InlineData("2026-08-03T23:59:00-05:00", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("03/08/2026 14:05", DateOrder.DayFirst, "2026-08-03")]
    [InlineData("29/02/2024", DateOrder.DayFirst, "2024-02-29")]
    public void TryDay_WrittenDate_TheDay(string text, object order, string day)
    {
        Assert.True(DateText.TryDay(text, (DateOrder)order, out DateOnly read));
        Assert.Equal(day, read.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("29/02/2023")]
    [InlineData("05/13/2022")]
    [InlineData("2026-13-01")]
    [InlineData("0000-00-00")]
    [InlineData("3/8")]
    [InlineData("3/8-2026")]
    [InlineData("1000-01-01")]
    [InlineData("45123")]
    [InlineData("soon")]
    [InlineData("3 Augustus 2026x")]
    [InlineData("Di soon")]
    [InlineData("")]
    public void TryDay_NoDate_NotRead(string text) => Assert.False(DateText.TryDay(text, DateOrder.DayFirst, out _));

    [Theory]
    [InlineData("45495", "2024-07-22 00:00:00")]
    [InlineData(" 45123.5 ", "2023-07-16 12:00:00")]
    [InlineData("45123,25", "2023-07-16 06:00:00")]
    [InlineData("32874", "1990-01-01 00:00:00")]
    public void SpreadsheetDay_NumberOfADay_TheDay(string text, string time)
    {
        Assert.True(SpreadsheetDay.TryRead(text, out DateTime read));
        Assert.Equal(time, read.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("24204")]
    [InlineData("32873")]
    [InlineData("51136")]
    [InlineData("451234")]
    [InlineData("45123.x")]
    [InlineData("4512")]
    [InlineData("45 123")]
    public void SpreadsheetDay_AnotherNumber_NotRead(string text) => Assert.False(SpreadsheetDay.TryRead(text, out _));

    [Theory]
    [InlineData("2026-08-03T10:15:00Z", "2026-08-03 10:15:00")]
    [InlineData("2026-08-03 10:15:00+02:00", "2026-08-03 08:15:00")]
    [InlineData("2026-08-03 10:15", "2026-08-03 10:15:00")]
    [InlineData("03/08/2026 2:05 pm", "2026-08-03 14:05:00")]
    [InlineData("03/08/2026 12:05 AM", "2026-08-03 00:05:00")]
    [InlineData("03/08/2026", "2026-08-03 00:00:00")]
    public void TryTime_WithOrWithoutZone_UtcOrAsWritten(string text, string time)
    {
        Assert.True(DateText.TryTime(text, DateOrder.DayFirst, out DateTime read));
        Assert.Equal(time, read.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("1,234.50", NumberStyle.Point, "1234.50")]
    [InlineData("1.234,50", NumberStyle.Comma, "1234.50")]
    [InlineData("2.000", NumberStyle.Comma, "2000")]
    [InlineData("1'234.50", NumberStyle.Point, "1234.50")]
    [InlineData("1 234,50", NumberStyle.Comma, "1234.50")]
    [InlineData("£12.50", NumberStyle.Point, "12.50")]
    [InlineData("12.50 EUR", NumberStyle.Point, "12.50")]
    [InlineData("US$ 12.50", NumberStyle.Point, "12.50")]
    [InlineData("kr. 12,50", NumberStyle.Comma, "12.50")]
    [InlineData("(12.50)", NumberStyle.Point, "-12.50")]
    [InlineData("12.50-", NumberStyle.Point, "-12.50")]
    [InlineData("-£12.50", NumberStyle.Point, "-12.50")]
    [InlineData("€ -3", NumberStyle.Point, "-3")]
    [InlineData("12,-", NumberStyle.Comma, "12")]
    [InlineData("0.005", NumberStyle.Point, "0.01")]
    public void TryRead_Money_TheAmount(string text, object style, string amount)
    {
        Assert.True(MoneyText.TryRead(text, (NumberStyle)style, out decimal read));
        Assert.Equal(decimal.Parse(amount, CultureInfo.InvariantCulture), read);
    }

    [Theory]
    [InlineData("PM01")]
    [InlineData("12.34.56")]
    [InlineData("1,23,4.5")]
    [InlineData("1.2.3,4")]
    [InlineData("--5")]
    [InlineData("£")]
    [InlineData("12 each")]
    [InlineData("99999999999999")]
    public void TryRead_NoMoney_NotRead(string text) => Assert.False(MoneyText.TryRead(text, NumberStyle.Point, out _));

    [Theory]
    [InlineData("2", 2)]
    [InlineData("2.0", 2)]
    [InlineData("2,00", 2)]
    [InlineData("x2", 2)]
    [InlineData("2 pcs", 2)]
    [InlineData("-1", -1)]
    public void TryRead_Quantity_TheCount(string text, int count)
    {
        Assert.True(QuantityText.TryRead(text, NumberStyle.Point, out int read));
        Assert.Equal(count, read);
    }

    [Theory]
    [InlineData("1.5")]
    [InlineData("two")]
    [InlineData("99999999999")]
    public void TryRead_NoQuantity_NotRead(string text) => Assert.False(QuantityText.TryRead(text, NumberStyle.Point, out _));

    [Theory]
    [InlineData("1h20", false, 80)]
    [InlineData("1 h 20 min", false, 80)]
    [InlineData("1:20", false, 80)]
    [InlineData("80 min", true, 80)]
    [InlineData("1.5", true, 90)]
    [InlineData("1,5", true, 90)]
    [InlineData("1.5h", false, 90)]
    [InlineData("2 hrs", false, 120)]
    [InlineData("45", false, 45)]
    public void TryRead_Duration_Minutes(string text, bool hours, double minutes)
    {
        Assert.True(DurationText.TryRead(text, hours, out double read));
        Assert.Equal(minutes, read, 9);
    }

    [Theory]
    [InlineData("1:75")]
    [InlineData("-5")]
    [InlineData("long")]
    [InlineData("")]
    public void TryRead_NoDuration_NotRead(string text) => Assert.False(DurationText.TryRead(text, false, out _));

    [Theory]
    [InlineData("2017", "2017-01-01", "2017-12-31")]
    [InlineData("2017-05", "2017-05-01", "2017-05-31")]
    [InlineData("02/2024", "2024-02-01", "2024-02-29")]
    [InlineData("May 2017", "2017-05-01", "2017-05-31")]
    [InlineData("2017-05-09", "2017-05-09", "2017-05-09")]
    public void TryRead_MadeOn_TheIntervalItCanMean(string text, string from, string to)
    {
        Assert.True(MadeOnText.TryRead(text, DateOrder.DayFirst, out DateOnly first, out DateOnly last));
        Assert.Equal(from, first.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        Assert.Equal(to, last.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("????")]
    [InlineData("0201")]
    [InlineData("20133")]
    [InlineData("13/2024")]
    public void TryRead_NoMadeOn_NotRead(string text) => Assert.False(MadeOnText.TryRead(text, DateOrder.DayFirst, out _, out _));

    [Fact]
    public void Read_PartsList_PartsWithCounts()
    {
        Assert.Equal([("40-118", 2), ("7731", 1)], PartsListText.Read("40-118 x2; 7731"));
        Assert.Equal([("40-118", 2), ("AX20", 1), ("B1", 3)], PartsListText.Read("2 x 40-118 + AX20 | B1 (3)"));
        Assert.Equal([("drum roller", 1), ("clamp", 2)], PartsListText.Read("drum roller / clamp x2"));
        Assert.Equal([("40118 / Drum roller", 1), ("L/R seal", 1)], PartsListText.Read("40118 / Drum roller; L/R seal"));
        Assert.Empty(PartsListText.Read(" ; "));
    }

    [Fact]
    public void Read_CountBeforePart_CountsOnlyWhereTheFileLeadsWithCounts()
    {
        Assert.Equal([("31-2539 JGO ESCOBILLAS", 1), ("40-118", 12)], PartsListText.Read("1x31-2539 JGO ESCOBILLAS; 12X40-118", countsLead: true));
        Assert.Equal([("1x31-2539", 1)], PartsListText.Read("1x31-2539"));
        Assert.Equal([("40-118", 2)], PartsListText.Read("2 x 40-118", countsLead: true));
        Assert.Equal([("bomba de drenagem", 1), ("correia", 2)], PartsListText.Read("01 bomba de drenagem / 02 correia", countsLead: true));
        Assert.Equal([("2 way valve", 1)], PartsListText.Read("2 way valve"));
    }

    [Theory]
    [InlineData("01 bomba", true)]
    [InlineData("1x31-2539", true)]
    [InlineData("12x31-2539", true)]
    [InlineData("07 drum roller", false)]
    [InlineData("40 118", false)]
    [InlineData("1", false)]
    public void MayLeadWithCount_FirstEntry_TellsCountsFromShortNumbers(string cell, bool expected) =>
        Assert.Equal(expected, PartsListText.MayLeadWithCount(cell));

    [Theory]
    [InlineData("bomba R$ 96,00 + correia R$ 1.038,50", "bomba;correia")]
    [InlineData("belt $38.50, pump 12.00 EUR", "belt;pump")]
    [InlineData("Pumpe (38,50 \u20ac); Riemen 12,- \u20ac", "Pumpe;Riemen")]
    [InlineData("40118, 7731", "40118;7731")]
    [InlineData("hose 2 ft, R134", "hose 2 ft;R134")]
    [InlineData("SEK-40, 12KR7", "SEK-40;12KR7")]
    public void Read_PricesBesideParts_AreLeftOut(string cell, string parts) =>
        Assert.Equal(parts.Split(';'), PartsListText.Read(cell).Select(p => p.Part));

    [Theory]
    [InlineData("16/12", DateOrder.DayFirst, "2024-12-10", "2024-12-16")]
    [InlineData("02/01", DateOrder.DayFirst, "2024-12-30", "2025-01-02")]
    [InlineData("12/16", DateOrder.MonthFirst, "2024-12-16", "2024-12-16")]
    [InlineData("Mo 3. Feb.", DateOrder.DayFirst, "2024-12-10", "2025-02-03")]
    public void TryDayFrom_DayWithoutYear_TheFirstFromTheOtherDayOn(string text, object order, string earliest, string day)
    {
        Assert.True(DateText.TryDayFrom(text, (DateOrder)order, DateOnly.Parse(earliest, CultureInfo.InvariantCulture), out DateOnly read));
        Assert.Equal(DateOnly.Parse(day, CultureInfo.InvariantCulture), read);
    }

    [Theory]
    [InlineData("16/12/2024")]
    [InlineData("31/02")]
    [InlineData("16")]
    [InlineData("16/12 x")]
    [InlineData("09/12")]
    public void TryDayFrom_AnythingElse_NotRead(string text) => Assert.False(DateText.TryDayFrom(text, DateOrder.DayFirst, new DateOnly(2024, 12, 10), out _));

    [Fact]
    public void CalendarWords_Name_IsKnownWithAndWithoutAccentsInAnyCase()
    {
        Assert.Equal([1, 2, 12, 0], new[] { "J\u00c4NNER", "fevrier", "grudnia", "soon" }.Select(w => CalendarWords.Month(w)));
        Assert.Equal([true, true, true, false], new[] { "Mercredi", "mie", "s\u00e1b", "march" }.Select(w => CalendarWords.IsWeekday(w)));
    }

    [Theory]
    [InlineData("E20 on display", "E20")]
    [InlineData("error code 4C", "4C")]
    [InlineData("display says F-06", "F06")]
    [InlineData("shows F 06", "F06")]
    [InlineData("model WE-2070 leaks", null)]
    [InlineData("leaks", null)]
    public void Find_ErrorCodeInText_CodeWithoutMarks(string text, string? code) => Assert.Equal(code, ErrorCodeText.Find(text));

    [Theory]
    [InlineData("WX41xx-B", "WX41__B")]
    [InlineData("WX41*", "WX41%")]
    [InlineData("WX4150-B", null)]
    [InlineData("WE46R/L", "WE46R|WE46L")]
    [InlineData("WX-R/L/C40", "WXR40|WXL40|WXC40")]
    [InlineData("WE4#R/L*", "WE4_R%|WE4_L%")]
    [InlineData("KP-200/A", null)]
    [InlineData("448030/01", null)]
    [InlineData("AB/CD7", null)]
    [InlineData("WE/L46", null)]
    [InlineData("N/A", null)]
    public void Pattern_PrintedWildcard_LikePattern(string model, string? pattern) => Assert.Equal(pattern, ModelWildcard.Pattern(model));
}
