using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Components and appliance types that the tables do not know, from the files to the store.</summary>
public sealed class OwnComponentsTests : IDisposable
{
    private const string Settings = """
        {"sources": [{"files": "jobs.csv", "kind": "jobs", "dateOrder": "ymd",
           "columns": {"job_id": "Job", "opened_on": "In", "closed_on": "Out", "appliance_type": "Type", "complaint": "Says", "outcome": "Result", "part": "Part"},
           "words": {"outcome": {"done": "fixed_with_part"}}}]}
        """;

    private readonly SmallShop _shop = new();

    public OwnComponentsTests() => _shop.Write("shop.json", Settings);

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_PartColumnOfWords_WholePhrasesBeforeSingleWords()
    {
        Jobs(("Dishwasher", "drain motor", 4), ("Washer", "motor", 3), ("Washer", "drain pump", 2));
        await _shop.Load();
        Assert.Equal(
            ["drain_motor|dishwasher|4", "motor|washer|3", "drain_pump|washer|2"],
            _shop.Rows("from jobs select main_component, appliance_type, count(*) as n group by all order by n desc"));
        Assert.Equal(["-|unresolved"], _shop.Rows("from job_parts select distinct part_raw, part_basis"));
    }

    [Fact]
    public async Task Load_ComponentLimitedToOtherTypes_CountsApart()
    {
        Jobs(("Fridge", "motor", 3), ("Washer", "motor", 3), ("Oven", "motor", 2));
        await _shop.Load();
        // Two are too few to tell a component of its own from two slips.
        Assert.Equal(
            ["refrigerator_motor|refrigerator|3", "motor|washer|3", "motor|range|2"],
            _shop.Rows("from jobs select main_component, appliance_type, count(*) as n group by all order by n desc, main_component desc"));
    }

    [Fact]
    public async Task Load_OwnComponent_IsListedOnceAndMergedByAnAnswer()
    {
        Jobs(("Dishwasher", "drain motor", 4), ("Dishwasher", "Drain motor 30 W", 2), ("Washer", "door gadget spring", 1));
        await _shop.Load();
        string[] own = [.. _shop.List(ReviewNames.Components).Where(l => l.Contains("drain_motor", StringComparison.Ordinal))];
        Assert.StartsWith("drain motor,6,2,drain_motor,main,", Assert.Single(own));
        Assert.Contains("drain_pump", own[0]);
        _shop.Answer((ReviewNames.Components, "drain motor,", "drain_pump"));
        await _shop.Load();
        Assert.Equal(["drain_pump|6"], _shop.Rows("from jobs select main_component, count(*) where appliance_type = 'dishwasher' group by all"));
    }

    [Fact]
    public async Task Load_HoseClamps_AreAccessoriesBesideTheRepair()
    {
        Jobs(("Washer", "cable ties", 3), ("Washer", "drain pump", 1));
        await _shop.Load();
        Assert.Equal(["cable_ties|accessory"], _shop.Rows("from job_parts select distinct component, 'accessory' where component = 'cable_ties'"));
    }

    [Fact]
    public async Task Load_TypeNoTableKnows_KeepsItsName()
    {
        Jobs(("Hair dryer", "motor", 5), ("Clothes dryer", "motor", 5));
        await _shop.Load();
        Assert.Equal(["dryer|5|motor", "hair_dryer|5|motor"], _shop.Rows("from jobs select appliance_type, count(*), min(main_component) group by all order by 1"));
    }

    [Fact]
    public async Task Load_OwnType_IsListedOnceAndMergedByAnAnswer()
    {
        Jobs(("Drum dryer", "motor", 5), ("Clothes dryer", "motor", 2));
        await _shop.Load();
        Assert.StartsWith("drum_dryer,5,", _shop.List(ReviewNames.Appliances)[1]);
        Assert.Contains(",dryer,", _shop.List(ReviewNames.Appliances)[1]);
        _shop.Answer((ReviewNames.Appliances, "drum_dryer,", "dryer"));
        await _shop.Load();
        Assert.Equal(["dryer|7"], _shop.Rows("from jobs select appliance_type, count(*) group by all"));
    }

    [Fact]
    public async Task Load_OwnTypeAnsweredWithOther_CountsAsOther()
    {
        Jobs(("Drum dryer", "motor", 5), ("Clothes dryer", "motor", 2));
        await _shop.Load();
        _shop.Answer((ReviewNames.Appliances, "drum_dryer,", "other"));
        await _shop.Load();
        Assert.Equal(["dryer|2", "other|5"], _shop.Rows("from jobs select appliance_type, count(*) group by all order by 1"));
    }

    [Fact]
    public async Task Load_OwnTypeAnsweredWithAnotherOfTheShop_CountsAsThatOneAndIsAskedNoMore()
    {
        Jobs(("Drum dryer", "motor", 5), ("Ice maker box", "motor", 2));
        await _shop.Load();
        _shop.Answer((ReviewNames.Appliances, "drum_dryer,", "Ice maker box"));
        await _shop.Load();
        Assert.Equal(["ice_maker_box|7"], _shop.Rows("from jobs select appliance_type, count(*) group by all order by 1"));
        Assert.DoesNotContain(_shop.List(ReviewNames.Appliances), l => l.Contains("answer not understood", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_AnswersInPlainWords_CountAsTheNamesTheyMean()
    {
        Jobs(("Dishwasher", "thingummy left", 5));
        await _shop.Load();
        _shop.Answer((ReviewNames.Components, "thingummy left", "Circulation pump"));
        await _shop.Load();
        Assert.Equal(["circulation_pump"], _shop.Rows("from jobs select distinct main_component"));
    }

    [Fact]
    public async Task Load_TypeNamedInTheComplaint_CountsWhereNoColumnSaysIt()
    {
        _shop.Write("jobs.csv", "Job,In,Out,Type,Says,Result,Part\nJ1,2024-03-04,2024-03-05,,the dishwasher does not drain,done,drain pump\nJ2,2024-03-04,2024-03-05,,does not drain,done,drain pump\n");
        await _shop.Load();
        Assert.Equal(["dishwasher", "-"], _shop.Rows("from jobs select appliance_type order by job_id"));
    }

    [Fact]
    public async Task Load_LinesForWorkAndTravel_AreNoParts()
    {
        Jobs(("Washer", "Labor 1 h", 5), ("Washer", "Service call", 4), ("Washer", "drain pump", 3), ("Washer", "door gadget", 3));
        await _shop.Load();
        Assert.Equal(["door_gadget|3", "drain_pump|3"], _shop.Rows("from job_parts select component, count(*) group by all order by 1"));
        // Work alone leaves open what was done.
        Assert.Equal(["door_gadget|3", "drain_pump|3", "other_part|9"], _shop.Rows("from jobs select main_component, count(*) group by all order by 1"));
        Assert.DoesNotContain(_shop.List(ReviewNames.Components), l => l.Contains("labor", StringComparison.Ordinal) || l.Contains("service", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_PriceListWithChargesAsAGroup_ItsNumbersAreNoParts()
    {
        _shop.Write("shop.json", Settings.Replace("]}", """
            , {"files": "prices.csv", "kind": "parts", "columns": {"part": "No", "description": "Name", "component": "Group"}}]}
            """, StringComparison.Ordinal));
        _shop.Write("prices.csv", "No,Name,Group\nA-100,Drain pump,Service\nW-1,Level one,Labor\nW-2,Standard visit,Labor\n");
        Jobs(("Washer", "W-1", 5), ("Washer", "A-100", 4), ("Washer", "W-2", 3));
        LoadReport report = await _shop.Load();
        Assert.Equal(["A-100|drain_pump|4"], _shop.Rows("from job_parts join parts using (part_number) select part_number, parts.component, count(*) group by all"));
        Assert.Contains(report.Assumptions, a => a.StartsWith("8 lines are charges for work, travel or fees, not parts: ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_PriceListThatSortsPartsIntoGroups_DescriptionsNameTheComponents()
    {
        _shop.Write("shop.json", Settings.Replace("]}", """
            , {"files": "prices.csv", "kind": "parts", "columns": {"part": "No", "description": "Name", "component": "Group"}}]}
            """, StringComparison.Ordinal));
        _shop.Write("prices.csv", "No,Name,Group\nA-100,Drain pump,Pumps\nA-200,Brew gasket 58,Hydraulic\nA-300,Door gadget,Hydraulic\nA-400,Thermostat,Hydraulic\nA-500,Circulation pump,Pumps\n");
        Jobs(("Washer", "A-100", 5), ("Washer", "A-200", 4), ("Washer", "Brew gasket 58", 3));
        await _shop.Load();
        Assert.Equal(["brew_gasket|7", "drain_pump|5"], _shop.Rows("from jobs select main_component, count(*) group by all order by 1"));
    }

    [Fact]
    public async Task Load_PriceListWithAComponentForEachName_ComponentsAreKept()
    {
        _shop.Write("shop.json", Settings.Replace("]}", """
            , {"files": "prices.csv", "kind": "parts", "columns": {"part": "No", "description": "Name", "component": "Component"}}]}
            """, StringComparison.Ordinal));
        _shop.Write("prices.csv", "No,Name,Component\nA-100,Gadget upper,Steam tank\nA-200,Gadget lower,Steam tank\nA-300,Kettle foot,Foot\n");
        Jobs(("Washer", "A-100", 5), ("Washer", "A-200", 4));
        await _shop.Load();
        Assert.Equal(["steam_tank|9"], _shop.Rows("from jobs select main_component, count(*) group by all order by 1"));
    }

    [Fact]
    public async Task Load_PartsInCapitals_AreWordsWhereTheLanguageKnowsThem()
    {
        Jobs(("Washer", "STEAM TANK", 4), ("Washer", "INVERTER", 3), ("Washer", "BXKQD", 2));
        await _shop.Load();
        Assert.Equal(["steam_tank|4", "inverter|3", "other_part|2"], _shop.Rows("from jobs select main_component, count(*) group by all order by 2 desc"));
    }

    [Fact]
    public async Task Load_ChargeThatTheOwnerCallsAComponent_IsOne()
    {
        Jobs(("Washer", "Labor", 5));
        _shop.Write(ReviewNames.Components, "description,answer\nlabor,drain_pump\n");
        await _shop.Load();
        Assert.Equal(["drain_pump|5"], _shop.Rows("from job_parts select component, count(*) group by all"));
    }

    private void Jobs(params (string Type, string Part, int Times)[] kinds)
    {
        var rows = kinds.SelectMany(k => Enumerable.Repeat(k, k.Times)).Select((k, i) => $"J{i},2024-03-{(i % 27) + 1:00},2024-03-28,{k.Type},leaks at the side,done,{k.Part}");
        _shop.Write("jobs.csv", "Job,In,Out,Type,Says,Result,Part\n" + string.Join('\n', rows) + "\n");
    }
}
