using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Pipeline.Checks;
using PartsSignal.Pipeline.Commands;

namespace PartsSignal.Pipeline.Tests.Checks;

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
        Assert.Contains(meant, c => c is { Component: "safety", First: true });
        Assert.All(meant.Where(c => c.Opening is not null), c => Assert.Contains(table.Openings, o => o.ApplianceType == type && o.Opening == c.Opening));
        Assert.All(meant.Where(c => c.Component is not ("none" or "other_part")), c => Assert.NotEqual("", c.Caution + c.Good));
    }

    [Fact]
    public void Load_WasherThatDoesNotFill_ChecksTheWholeWaterPath()
    {
        string[] components = [.. CheckTableReader.Load(null).Checks.Where(c => c.IsFor("washer", "no_fill")).Select(c => c.Component)];
        Assert.All(["none", "inlet_valve", "level_switch", "timer", "control_board", "door_lock", "safety"], (string c) => Assert.Contains(c, components));
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
