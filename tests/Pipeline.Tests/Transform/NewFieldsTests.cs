using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>The component at fault, repair notes, who supplied a part, what was sent back, and stock on the shelf, from file to answer.</summary>
public sealed class NewFieldsTests
{
    private const string Jobs = """
        Job,Date in,Date out,Appliance,Problem,Result,Part,What,Fault,Did,From
        J1,2026-01-05,2026-01-06,washer,does not drain,part fitted,B1,drive belt,Drain pump,removed a coin from Mrs Berg's pump,Brix
        J2,2026-01-07,2026-01-08,washer,no fill,part fitted,B1,drive belt,,,
        J3,2026-01-09,2026-01-10,washer,no fill,,,,Inlet valve,will come back,
        J4,2026-01-11,,washer,leaks,,,,Door seal,,
        J5,2026-01-12,2026-01-12,washer,leaks,no part needed,,,Door seal,,
        J6,2026-01-13,2026-01-13,washer,sings,,,,Drain motor,,
        J7,2026-01-14,2026-01-14,washer,sings,,,,drain motor,,
        J8,2026-01-15,2026-01-15,washer,sings,,,,Drain motor,,
        """;

    private const string JobMap = """
        { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": ["Job"], "opened_on": ["Date in"], "closed_on": ["Date out"], "appliance_type": ["Appliance"], "complaint": ["Problem"],
          "outcome": ["Result"], "part": ["Part"], "description": ["What"], "fault_component": ["Fault"], "repair_notes": ["Did"], "supplier": ["From"] } }
        """;

    // The component at fault comes before the part fitted; without an outcome it still is the cause of a finished job. No part
    // needed stays no part, and an open job has no cause yet. What no table knows counts under the shop's own name.
    [Fact]
    public async Task Jobs_ComponentAtFault_IsTheCause()
    {
        using SmallShop shop = await Load("{ \"sources\": [ " + JobMap + " ] }", ("jobs.csv", Jobs));
        Assert.Equal(
            ["J1|drain_pump", "J2|drive_belt", "J3|inlet_valve", "J4|-", "J5|none", "J6|drain_motor", "J7|drain_motor", "J8|drain_motor"],
            shop.Rows("from jobs select job_id, main_component order by 1"));
    }

    [Fact]
    public async Task JobParts_SupplierOnTheLine_IsTheSupplier()
    {
        using SmallShop shop = await Load("{ \"sources\": [ " + JobMap + " ] }", ("jobs.csv", Jobs));
        Assert.Equal(["J1|Brix", "J2|-"], shop.Rows("from job_parts select job_id, supplier order by 1"));
    }

    // Nothing of the technician's notes is kept anywhere in the store.
    [Fact]
    public async Task Load_RepairNotes_AreNotKept()
    {
        using SmallShop shop = await Load("{ \"sources\": [ " + JobMap + " ] }", ("jobs.csv", Jobs));
        using Database database = shop.Open();
        string[] tables = [.. database.Query("select table_name from information_schema.tables", r => r.GetString(0))];
        Assert.Contains("jobs", tables);
        Assert.All(tables, t => Assert.Equal(0, database.Query($"select count(*) from \"{t}\" as t where t::varchar ilike '%coin%' or t::varchar ilike '%Berg%'", r => r.GetInt64(0)).Single()));
    }

    [Theory]
    [InlineData("", "", "O1|-", "O2|-", "O3|-")]
    [InlineData(", \"returned\": [\"Back\"]", "", "O1|3", "O2|0", "O3|0")]
    [InlineData(", \"returned_on\": [\"Back on\"]", "", "O1|3", "O2|0", "O3|0")]
    [InlineData(", \"returned_quantity\": [\"Pieces back\"]", "", "O1|2", "O2|0", "O3|0")]
    [InlineData(", \"returned\": [\"Back\"], \"returned_quantity\": [\"Pieces back\"]", "", "O1|2", "O2|0", "O3|0")]
    [InlineData(", \"returned\": [\"Back\"]", "perhaps", "O1|3", "O2|0", "O3|-")]
    public async Task PartOrders_WhatWasSentBack_IsUnknownWhereNothingTells(string columns, string third, params string[] expected)
    {
        string rows = $"Order,Day,Part,Pieces,Back,Back on,Pieces back\nO1,2026-01-05,B1,3,yes,2026-02-01,2\nO2,2026-01-06,B1,1,no,,\nO3,2026-01-07,B1,1,{third},,\n";
        string map = "{ \"sources\": [ { \"files\": \"orders.csv\", \"kind\": \"part_orders\", \"supplier\": \"Brix\", \"columns\": { \"order_id\": [\"Order\"], \"ordered_on\": [\"Day\"], \"part\": [\"Part\"], \"quantity\": [\"Pieces\"]" + columns + " } } ] }";
        using SmallShop shop = await Load(map, ("orders.csv", rows));
        Assert.Equal(expected, shop.Rows("from part_orders select order_id, returned_quantity order by 1"));
    }

    // A list without vans is the shelf; a blank van among named ones is a gap.
    [Theory]
    [InlineData("Part,Pieces\nB1,4\n", "", "-|B1|4")]
    [InlineData("Van,Part,Pieces\n1,B1,4\n,B2,1\n", "\"van\": [\"Van\"], ", "1|B1|4")]
    public async Task VanCounts_WithoutVans_AreTheShelf(string rows, string van, string expected)
    {
        string map = "{ \"sources\": [ { \"files\": \"stock.csv\", \"kind\": \"van_counts\", \"columns\": { " + van + "\"part\": [\"Part\"], \"on_hand\": [\"Pieces\"] } } ] }";
        using SmallShop shop = await Load(map, ("stock.csv", rows));
        Assert.Equal([expected], shop.Rows("from van_counts select van, part_raw, on_hand order by 1"));
    }

    private static async Task<SmallShop> Load(string settings, (string Name, string Text) file)
    {
        var shop = new SmallShop();
        await shop.Write("shop.json", settings).Write(file.Name, file.Text).Load();
        return shop;
    }
}
