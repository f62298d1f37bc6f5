using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>The component at fault, repair notes, who supplied a part, what was sent back, and stock on the shelf, from file to answer.</summary>
public sealed class NewFieldsTests(FaultsShop faults) : IClassFixture<FaultsShop>
{
    // The component at fault comes before the part fitted; without an outcome it still is the cause of a finished job. No part
    // needed stays no part, and an open job has no cause yet. What no table knows counts under the shop's own name.
    [Fact]
    public void Jobs_ComponentAtFault_IsTheCause()
    {
        Assert.Equal(
            ["J1|drain_pump", "J2|drive_belt", "J3|inlet_valve", "J4|-", "J5|none", "J6|drain_motor", "J7|drain_motor", "J8|drain_motor"],
            faults.Rows("from jobs select job_id, main_component order by 1"));
    }

    [Fact]
    public void JobParts_SupplierOnTheLine_IsTheSupplier()
    {
        Assert.Equal(["J1|Brix", "J2|-"], faults.Rows("from job_parts select job_id, supplier order by 1"));
    }

    // Nothing of the technician's notes is kept anywhere in the store.
    [Fact]
    public void Load_RepairNotes_AreNotKept()
    {
        using Database database = faults.Open();
        string[] tables = [.. database.Query("select table_name from information_schema.tables", r => r.GetString(0))];
        Assert.Contains("jobs", tables);
        Assert.All(tables, t => Assert.Equal(0, database.Query($"select count(*) from \"{t}\" as t where t::varchar ilike '%coin%' or t::varchar ilike '%Berg%'", r => r.GetInt64(0)).Single()));
    }

    [Fact]
    public async Task PartOrders_WhatWasSentBack_IsUnknownWhereNothingTells()
    {
        (string Columns, string Third, string[] Expected)[] lists =
        [
            ("", "", ["-", "-", "-"]),
            (""", "returned": ["Back"]""", "", ["3", "0", "0"]),
            (""", "returned_on": ["Back on"]""", "", ["3", "0", "0"]),
            (""", "returned_quantity": ["Pieces back"]""", "", ["2", "0", "0"]),
            (""", "returned": ["Back"], "returned_quantity": ["Pieces back"]""", "", ["2", "0", "0"]),
            (""", "returned": ["Back"]""", "perhaps", ["3", "0", "-"]),
        ];
        using var shop = new SmallShop();
        foreach ((int i, (_, string third, _)) in lists.Index())
        {
            shop.Write($"orders-{i}.csv", $"Order,Day,Part,Pieces,Back,Back on,Pieces back\n{i}-1,2026-01-05,B1,3,yes,2026-02-01,2\n{i}-2,2026-01-06,B1,1,no,,\n{i}-3,2026-01-07,B1,1,{third},,\n");
        }

        IEnumerable<string> sources = lists.Select((l, i) =>
            $$"""{ "files": "orders-{{i}}.csv", "kind": "part_orders", "supplier": "Brix", "columns": { "order_id": ["Order"], "ordered_on": ["Day"], "part": ["Part"], "quantity": ["Pieces"]{{l.Columns}} } }""");
        await shop.Write("shop.json", $$"""{ "sources": [ {{string.Join(", ", sources)}} ] }""").Load();
        Assert.Equal(
            lists.SelectMany((l, i) => l.Expected.Select((back, line) => $"{i}-{line + 1}|{back}")),
            shop.Rows("from part_orders select order_id, returned_quantity order by 1"));
    }

    // A list without vans is the shelf; a blank van among named ones is a gap.
    [Theory]
    [InlineData("Part,Pieces\nB1,4\n", "", "-|B1|4")]
    [InlineData("Van,Part,Pieces\n1,B1,4\n,B2,1\n", "\"van\": [\"Van\"], ", "1|B1|4")]
    public async Task VanCounts_WithoutVans_AreTheShelf(string rows, string van, string expected)
    {
        string map = "{ \"sources\": [ { \"files\": \"stock.csv\", \"kind\": \"van_counts\", \"columns\": { " + van + "\"part\": [\"Part\"], \"on_hand\": [\"Pieces\"] } } ] }";
        using var shop = new SmallShop();
        await shop.Write("shop.json", map).Write("stock.csv", rows).Load();
        Assert.Equal([expected], shop.Rows("from van_counts select van, part_raw, on_hand order by 1"));
    }
}

/// <summary>A shop whose log names the component at fault, the supplier of a part and what was done, loaded once.</summary>
public sealed class FaultsShop : SharedShop
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

    internal override void Write(SmallShop shop) => shop.Write("shop.json", "{ \"sources\": [ " + JobMap + " ] }").Write("jobs.csv", Jobs);
}
