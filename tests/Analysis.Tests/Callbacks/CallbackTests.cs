using PartsSignal.Analysis.Callbacks;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Callbacks;

public class CallbackTests
{
    private static readonly DateOnly End = new(2024, 12, 31);

    [Fact]
    public void Callbacks_SameUnitSameComplaintWithinWindow_IsOne()
    {
        using Database database = new SmallShop
        {
            Jobs = [Fixed("J1", "u", new(2024, 3, 1), new(2024, 3, 4)), Fixed("J2", "u", new(2024, 3, 20), new(2024, 3, 20))],
        }.Build(ResultModels.Callbacks, End);
        var found = database.Query("from callbacks select job_id, earlier_job_id, days_after", r => (r.GetString(0), r.GetString(1), r.Int(2)));
        Assert.Equal([("J2", "J1", 16)], found);
    }

    [Fact]
    public void Callbacks_OtherComplaintOtherUnitOrTooLate_AreNone()
    {
        using Database database = new SmallShop
        {
            Jobs =
            [
                Fixed("J1", "u", new(2024, 3, 1), new(2024, 3, 1)),
                Fixed("J2", "u", new(2024, 3, 9), new(2024, 3, 9)) with { ComplaintKind = "leak" },
                Fixed("J3", "v", new(2024, 3, 9), new(2024, 3, 9)),
                Fixed("J4", "u", new(2024, 5, 1), new(2024, 5, 1)),
            ],
        }.Build(ResultModels.Callbacks, End);
        Assert.Equal(0, database.Count("callbacks"));
        CallbackShare thirty = CallbackShare.Table(database).Single(s => s is { Days: 30, Grouping: "all" });
        Assert.Equal((4, 0, 1), (thirty.Repairs, thirty.Callbacks, thirty.Returns));
    }

    [Fact]
    public void Callbacks_EarlierJobNotFinished_IsNone()
    {
        using Database database = new SmallShop
        {
            Jobs =
            [
                Fixed("J1", "u", new(2024, 3, 1), new(2024, 3, 1)) with { Outcome = "declined" },
                Fixed("J2", "u", new(2024, 3, 9), new(2024, 3, 9)),
            ],
        }.Build(ResultModels.Callbacks, End);
        Assert.Equal(0, database.Count("callbacks"));
    }

    [Fact]
    public void CallbackShares_WindowNotOver_CountsNeitherWay()
    {
        using Database database = new SmallShop
        {
            Jobs = [Fixed("J1", "u", new(2024, 12, 1), new(2024, 12, 10)), Fixed("J2", "u", new(2024, 12, 20), new(2024, 12, 20))],
        }.Build(ResultModels.Callbacks, End);
        CallbackShare thirty = CallbackShare.Table(database).Single(s => s is { Days: 30, Grouping: "all" });
        Assert.Equal((0, 2), (thirty.Repairs, thirty.NotFollowed));
        Assert.Equal("too few: 0 of 10 repairs", thirty.Missing);
    }

    [Fact]
    public void RepeatFailures_ThirtyAndNinetyDays_AreKeptApart()
    {
        var shop = new SmallShop();
        for (int i = 0; i < 12; i++)
        {
            shop.Jobs.Add(Fixed($"A{i:00}", $"u{i}", new(2024, 1, 1), new(2024, 1, 1)));
            shop.Parts.Add(new JobPartRow($"A{i:00}", 1, "P1", "drain_pump") { Supplier = "Haldor" });
        }

        Again(shop, "B1", "u1", new(2024, 1, 21));
        Again(shop, "B2", "u2", new(2024, 2, 20));
        Again(shop, "B3", "u3", new(2024, 8, 1));
        using Database database = shop.Build(ResultModels.Callbacks, End);
        IReadOnlyList<RepeatFailure> table = RepeatFailure.Table(database);
        RepeatFailure Row(string stretch) => table.Single(r => r is { Component: "drain_pump", Supplier: "Haldor" } && r.Stretch == stretch);
        Assert.Equal((12, 1), (Row("0-30").AtRisk, Row("0-30").ReplacedAgain));
        Assert.Equal((11, 1), (Row("31-90").AtRisk, Row("31-90").ReplacedAgain));
        Assert.Equal((12, 2), (Row("0-90").AtRisk, Row("0-90").ReplacedAgain));
        Assert.Equal(2 / 12.0, Row("0-90").Share!.Value, 1e-12);
    }

    [Fact]
    public void RepeatFailures_UnitWrittenOff_IsNotFollowedFurther()
    {
        var shop = new SmallShop { Units = [new UnitRow("u") { RemovedOn = new(2024, 2, 1) }] };
        shop.Jobs.Add(Fixed("J1", "u", new(2024, 1, 1), new(2024, 1, 1)));
        shop.Parts.Add(new JobPartRow("J1", 1, "P1", "drain_pump"));
        using Database database = shop.Build(ResultModels.Callbacks, End);
        Assert.Equal(31, database.Query("from int_part_followups select followed_days", r => r.Int(0))[0]);
    }

    private static void Again(SmallShop shop, string job, string unit, DateOnly day)
    {
        shop.Jobs.Add(Fixed(job, unit, day, day));
        shop.Parts.Add(new JobPartRow(job, 1, "P1", "drain_pump"));
    }

    private static JobRow Fixed(string id, string unit, DateOnly opened, DateOnly closed) => new(id, opened)
    {
        UnitId = unit,
        ClosedOn = closed,
        ComplaintKind = "no_drain",
        MainComponent = "drain_pump",
        Technician = "T1",
    };
}
