using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.DateCodes;

namespace PartsSignal.Pipeline.Tests.DateCodes;

public sealed class DatedSerialsTests
{
    private static readonly BuildInterval Year2015 = BuildInterval.Year(2015);

    [Fact]
    public void Add_TwoRowsOfOneAppliance_AreOneWithTheEarliestStartAndTheBuildDaysInBoth()
    {
        var serials = new DatedSerials();
        serials.Add("Velq", "AB-123", new(Year2015, new(2016, 5, 1), null));
        serials.Add("velq", "ab 123", new(new(new(2015, 6, 1), new(2016, 6, 1)), new(2016, 2, 1), null));
        Assert.Equal(new DatedSerial("Velq", "AB123", new(new(2015, 6, 1), new(2015, 12, 31)), new DateOnly(2016, 2, 1)), Assert.Single(serials.All));
    }

    [Fact]
    public void Add_RowsThatContradictEachOther_AreNoEvidence()
    {
        var serials = new DatedSerials();
        serials.Add("Velq", "AB123", new(Year2015, null, null));
        serials.Add("Velq", "AB123", new(BuildInterval.Year(2017), null, null));
        Assert.Empty(serials.All);
    }

    [Fact]
    public void Add_StatedAge_CountsOnlyWhereNoDateIsKnown()
    {
        var serials = new DatedSerials();
        serials.Add("Velq", "AB123", new(null, null, Year2015));
        serials.Add("Velq", "AB124", new(null, new(2019, 1, 1), Year2015));
        Assert.Equal([Year2015, null], serials.All.Select(s => s.Built));
    }

    [Fact]
    public void All_MisspelledBrand_IsLeftOut()
    {
        var serials = new DatedSerials();
        for (int i = 0; i < 20; i++)
        {
            serials.Add("Velquora", $"AB{i:000}", new(Year2015, null, null));
        }

        serials.Add("Velquor", "AB901", new(Year2015, null, null));
        serials.Add("Ombrelin", "AB902", new(Year2015, null, null));
        Assert.Equal(["Ombrelin", "Velquora"], serials.All.Select(s => s.Brand).Distinct().Order());
    }

    [Theory]
    [InlineData("Velq", "-")]
    [InlineData("--", "AB123")]
    [InlineData("Velq", "0123456789012345678901234567890123456789X")]
    public void Add_WhatTellsNoAppliance_IsLeftOut(string brand, string serial)
    {
        var serials = new DatedSerials();
        serials.Add(brand, serial, new(Year2015, null, null));
        Assert.Empty(serials.All);
    }
}
