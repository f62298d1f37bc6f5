using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Config;

public sealed class CheckTableReaderTests
{
    [Theory]
    [InlineData("washer")]
    [InlineData("dryer")]
    [InlineData("dishwasher")]
    [InlineData("refrigerator")]
    [InlineData("range")]
    [InlineData("microwave")]
    public void Load_ShippedTable_HasASafetyCheckAndOpeningsForEveryType(string type)
    {
        CheckTable table = CheckTableReader.Load(null);
        ComponentCheck[] meant = [.. table.Checks.Where(c => c.IsFor(type, "no_start"))];
        Assert.Contains(meant, c => c is { Component: "safety", First: true } && c.ApplianceTypes.Contains(type));
        Assert.All(meant.Where(c => c.Opening is not null), c => Assert.Contains(table.Openings, o => o.ApplianceType == type && o.Opening == c.Opening));
        Assert.All(meant.Where(c => c.Component is not ("none" or "other_part")), c => Assert.NotEqual("", c.Caution + c.Good));
    }

    [Fact]
    public void Load_ShippedTable_HasASafetyCheckForTypesWithoutOneOfTheirOwn()
    {
        ComponentCheck check = Assert.Single(CheckTableReader.Load(null).Checks, c => c.IsSafety && c.ApplianceTypes.Count == 0);
        Assert.True(check.First);
        Assert.NotEqual("", check.Caution);
        Assert.True(check.IsFor("other", "no_start"));
    }

    [Fact]
    public void Load_WasherThatDoesNotFill_ChecksTheWholeWaterPath()
    {
        string[] components = [.. CheckTableReader.Load(null).Checks.Where(c => c.IsFor("washer", "no_fill")).Select(c => c.Component)];
        Assert.All(["none", "inlet_valve", "level_switch", "timer", "control_board", "door_lock", "safety"], (string c) => Assert.Contains(c, components));
    }

    [Fact]
    public void Load_ShippedTable_CautionsWhereTheWorkCanHurt()
    {
        CheckTable table = CheckTableReader.Load(null);
        ComponentCheck[] Of(string type, string component) => [.. table.Checks.Where(c => c.ApplianceTypes.Contains(type) && c.Component == component)];
        foreach (string component in (string[])["magnetron", "hv_diode", "hv_capacitor", "hv_transformer", "door_switch", "line_fuse"])
        {
            Assert.All(Of("microwave", component), c => Assert.Contains("not trained for microwave high voltage, stop", c.Caution, StringComparison.Ordinal));
        }

        Assert.All(Of("refrigerator", "compressor"), c => Assert.Contains("certified for refrigerants", c.Caution, StringComparison.Ordinal));
        Assert.All(Of("range", "igniter").Concat(Of("dryer", "igniter")), c => Assert.Contains("licensed gas technician", c.Caution, StringComparison.Ordinal));
        Assert.All(table.Checks.Where(c => c.Tool.Contains("volts", StringComparison.Ordinal)), c => Assert.NotEqual("", c.Caution));
        Assert.All(table.Checks.Where(c => c.Tool.StartsWith("meter", StringComparison.Ordinal)), c => Assert.True(c.Good.Length > 0 && c.Bad.Length > 0, c.What));
    }

    [Fact]
    public void Load_ShippedTable_EveryComponentOfATypeHasACheck()
    {
        CheckTable table = CheckTableReader.Load(null);
        string[] lines = WordTable.ReadDefault("components.csv").Split('\n', StringSplitOptions.RemoveEmptyEntries)[1..];
        foreach (string[] cells in lines.Select(l => l.Split(',')).Where(c => c[1] != "*" && c[2].Trim() == "main"))
        {
            Assert.All(cells[1].Split('|'), type => Assert.Contains(table.Checks, c => c.Component == cells[0] && (c.ApplianceTypes.Count == 0 || c.ApplianceTypes.Contains(type))));
        }
    }

    [Fact]
    public void Load_OwnTableWithFaults_NamesThemAll()
    {
        string folder = Directory.CreateTempSubdirectory("checks").FullName;
        File.WriteAllText(Path.Combine(folder, "checks.csv"), "appliance_types,complaints,component,check,minutes,tool,good,bad,opening,finds,share,first,caution\nwasher,*,timer,Dial,soon,,,,,2,1,,\n");
        File.WriteAllText(Path.Combine(folder, "check-openings.csv"), "appliance_type,opening,caution\n");
        var bad = Assert.Throws<BadInputException>(() => CheckTableReader.Load(folder));
        Assert.Equal(3, bad.Faults.Count);
        Directory.Delete(folder, recursive: true);
    }
}
