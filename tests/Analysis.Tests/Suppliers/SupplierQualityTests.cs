using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Suppliers;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Suppliers;

public class SupplierQualityTests
{
    [Fact]
    public void Of_SupplierWhosePumpsFailEarly_StandsOutForPumpsAlone()
    {
        IReadOnlyList<SupplierPart> table = SupplierQualityTable.Create(
        [
            new SupplierCount("Bad", null, 0, 0, 0, 260, 14),
            new SupplierCount("Bad", "drain_pump", 0, 0, 0, 60, 12),
            new SupplierCount("Bad", "inlet_valve", 0, 0, 0, 200, 2),
            new SupplierCount("Good", null, 0, 0, 0, 320, 5),
            new SupplierCount("Good", "drain_pump", 0, 0, 0, 120, 3),
            new SupplierCount("Good", "inlet_valve", 0, 0, 0, 200, 2),
        ],
        new EffectGate());
        SupplierPart found = Assert.Single(table, r => r.StandsOut);
        Assert.Equal(("Bad", "drain_pump"), (found.Supplier, found.Component));
        Assert.Equal(60 * (15 / 180.0), found.Expected, 1e-12);
        Assert.Equal(12 / 60.0 / (3 / 120.0), found.Ratio!.Value, 1e-12);
        Assert.Equal(7, table[0].Expected, 1e-12);
    }

    [Fact]
    public void Of_OthersNeverFail_StillStandsOutThoughThereIsNoRatio()
    {
        SupplierPart bad = SupplierQualityTable.Create(
            [new SupplierCount("Bad", "timer", 0, 0, 0, 100, 12), new SupplierCount("Good", "timer", 0, 0, 0, 100, 0)], new EffectGate())[0];
        Assert.Null(bad.Ratio);
        Assert.True(bad.StandsOut);
    }

    [Fact]
    public void Of_OnlySupplierOfAComponent_IsNotCompared()
    {
        SupplierPart only = SupplierQualityTable.Create([new SupplierCount("A", "timer", 20, 20, 1, 20, 5)], new EffectGate())[0];
        Assert.Null(only.P);
        Assert.Equal(0.05, only.ReturnShare!.Value, 1e-12);
        Assert.Equal(0.25, only.FailedShare!.Value, 1e-12);
    }

    // Of a clamp set and a pump fitted along with another cause nothing has failed; of a pump at fault twice one has.
    [Fact]
    public void Counts_AccessoriesAndPartsFittedAlong_AreNoEarlyFailures()
    {
        DateOnly day = new(2024, 1, 1);
        JobRow Repair(string job, string unit, int after, string cause) => new(job, day.AddDays(after)) { ClosedOn = day.AddDays(after), UnitId = unit, MainComponent = cause };
        JobPartRow Part(string job, int line, string component) => new(job, line, $"P-{component}", component) { Supplier = "A" };
        var shop = new SmallShop
        {
            Jobs =
            [
                Repair("along 1", "u", 0, "drain_pump"), Repair("along 2", "u", 40, "inlet_valve"),
                Repair("again 1", "v", 0, "drain_pump"), Repair("again 2", "v", 40, "drain_pump"), Repair("last", "w", 300, "timer"),
            ],
            Parts =
            [
                Part("along 1", 1, "drain_pump"), Part("along 1", 2, "clamp_set"), Part("along 2", 1, "inlet_valve"), Part("along 2", 2, "drain_pump"), Part("along 2", 3, "clamp_set"),
                Part("again 1", 1, "drain_pump"), Part("again 2", 1, "drain_pump"),
            ],
            Units = [new UnitRow("u"), new UnitRow("v"), new UnitRow("w")],
        };
        using Database database = shop.Build([.. ResultModels.Callbacks, .. ResultModels.Suppliers, .. ResultModels.Curves]);
        Assert.Equal(
            [("drain_pump", 3L, 1L), ("inlet_valve", 1L, 0L)],
            SupplierCount.Read(database).Where(c => c.Component is not null).Select(c => (c.Component!, c.Followed, c.Failed)));
        // what comes back soon and the curve of replaced parts count the same event
        Assert.Equal([("drain_pump", 1L)], database.Query("from repeat_counts select component, again where supplier = 'A' and component is not null and stretch like '0-9%' and again > 0", r => (r.GetString(0), r.GetInt64(1))));
        Assert.Equal(["again 1"], database.Query("from replacement_spans select job_id where ending = 'failed_again'", r => r.GetString(0)));
    }

    // Where no column tells, nothing is known to have come back; all of it would be the engine's answer to least(null, quantity).
    [Fact]
    public void Counts_NoColumnTellsReturns_NoPieceIsReturned()
    {
        var shop = new SmallShop
        {
            Jobs = [new JobRow("J1", new(2024, 6, 1))],
            Orders = [new PartOrderRow("O1", 1, "A", new(2024, 1, 1), new(2024, 1, 4)) { Component = "timer", Quantity = 3, ReturnedQuantity = null }],
        };
        using Database database = shop.Build([.. ResultModels.Callbacks, .. ResultModels.Suppliers]);
        SupplierCount timer = SupplierCount.Read(database).Single(c => c.Component == "timer");
        Assert.Equal((3, 0, 0), (timer.Pieces, timer.ToldPieces, timer.PiecesReturned));
    }

    [Fact]
    public void Counts_OrderLines_GiveReceivedAndReturnedPieces()
    {
        var shop = new SmallShop
        {
            Jobs = [new JobRow("J1", new(2024, 6, 1))],
            Orders =
            [
                new PartOrderRow("O1", 1, "A", new(2024, 1, 1), new(2024, 1, 4)) { Component = "timer", Quantity = 3, ReturnedQuantity = 1, ReturnReason = "Wrong part " },
                new PartOrderRow("O2", 1, "A", new(2024, 5, 30), null) { Component = "timer", Quantity = 7 },
            ],
        };
        using Database database = shop.Build([.. ResultModels.Callbacks, .. ResultModels.Suppliers]);
        SupplierCount timer = SupplierCount.Read(database).Single(c => c.Component == "timer");
        Assert.Equal((3, 1), (timer.Pieces, timer.PiecesReturned));
        Assert.Equal([("wrong part", 1L)], database.Query("from supplier_returns select return_reason, pieces_returned", r => (r.GetString(0), r.GetInt64(1))));
    }

    [Fact]
    public void LeadTimes_LinesStillWaiting_CountAsLongerNotAsNothing()
    {
        var shop = new SmallShop { Jobs = [new JobRow("J1", new(2024, 6, 1))] };
        for (int i = 0; i < 10; i++)
        {
            // Six arrive after 0 to 5 days; four have waited 20 days and more.
            DateOnly ordered = i < 6 ? new(2024, 1, 1) : new(2024, 5, 1);
            shop.Orders.Add(new PartOrderRow($"O{i}", 1, "A", ordered, i < 6 ? ordered.AddDays(i) : null) { Component = "timer" });
        }

        using Database database = shop.Build([.. ResultModels.Callbacks, .. ResultModels.Suppliers], new DateOnly(2024, 6, 1));
        LeadTime time = LeadTime.Table(database).Single(t => t.Grouping == "all");
        Assert.Equal((10, 4), (time.Lines, time.Waiting));
        Assert.Equal(4.5, time.MedianDays);
        Assert.Null(time.NinetyPercentDays);
    }

    [Fact]
    public void Create_NoReturnEverRecorded_IsUnknownNotZero()
    {
        SupplierPart part = Assert.Single(SupplierQualityTable.Create([new SupplierCount("A", null, 500, 500, 0, 0, 0)], new EffectGate()));
        Assert.Null(part.ReturnShare);
        Assert.Equal("no return is recorded", part.ReturnMissing);
    }
}
