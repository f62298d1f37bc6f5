using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Review;

namespace PartsSignal.Pipeline.Tests.Review;

public sealed class SheetAnswerTests
{
    [Theory]
    [InlineData("52105", "Number", "0052105;0052106", "0052105")]
    [InlineData("52107", "Number", "0052105;0052106", null)]
    [InlineData("52105", "Number", "052105;0052105", null)]
    [InlineData("1200000", "DamagedNumber", "12E5;AB-1", "12E5")]
    [InlineData("12345678901234500", "DamagedNumber", "12345678901234512", "12345678901234512")]
    [InlineData("2026-12-03", "Date", "3-12;12-4", "3-12")]
    [InlineData("2026-12-03", "Date", "12/3", "12/3")]
    [InlineData("2026-03-01", "Date", "MAR-26", "MAR-26")]
    [InlineData("2004-07-12", "Date", "12-7-04", "12-7-04")]
    [InlineData("2026-12-03", "Date", "3-12;12-3", null)]
    [InlineData("true", "Flag", "TRUE", "TRUE")]
    [InlineData("#NAME?", "Error", "#NAME?", null)]
    public void Restore_WhatASpreadsheetMadeOfIt_GivesWhatWasTyped(string cell, string form, string texts, string? expected) =>
        Assert.Equal(expected, SheetAnswer.Restore(cell, Enum.Parse<CellForm>(form), texts.Split(';')));

    [Fact]
    public void Month_DayOfASpreadsheet_GivesItsMonth()
    {
        Assert.Equal("2017-04", SheetAnswer.Month("2017-04-01", CellForm.Date));
        Assert.Null(SheetAnswer.Month("2017", CellForm.Number));
    }
}
