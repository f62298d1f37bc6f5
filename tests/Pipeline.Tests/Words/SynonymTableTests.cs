using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class SynonymTableTests
{
    private static readonly WordSets Words = WordSets.Load(null);

    [Theory]
    [InlineData("Breakdown maintenance", "failure")]
    [InlineData("Maintenance/Repair", "failure")]
    [InlineData("Repair - estimate", "failure")]
    [InlineData("Unplanned maintenance", "failure")]
    [InlineData("Planned maintenance", "preventive")]
    [InlineData("Maintenance", "preventive")]
    [InlineData("Wartung", "preventive")]
    [InlineData("Safety check", "inspection")]
    public void Reasons_WordsOfSeveral_WhatFailedCounts(string cell, string expected) => Assert.Equal(expected, Words.Reasons.Find(cell));

    [Theory]
    [InlineData("Repaired", "closed")]
    [InlineData("Not repaired", "open")]
    [InlineData("Not fixed yet", "open")]
    [InlineData("Not ready", "open")]
    [InlineData("nicht repariert", "open")]
    [InlineData("non réparé", "open")]
    [InlineData("niet opgelost", "open")]
    [InlineData("nie naprawione", "open")]
    public void Statuses_Denied_AreOpen(string cell, string expected) => Assert.Equal(expected, Words.Statuses.Find(cell));
}
