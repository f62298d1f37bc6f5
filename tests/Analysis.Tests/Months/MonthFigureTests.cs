using PartsSignal.Analysis.Months;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Months;

public sealed class MonthFigureTests
{
    private static readonly DateOnly January = new(2024, 1, 1);

    [Fact]
    public void Table_ThreeMonthsOneEmpty_EachHasItsRow()
    {
        using Database database = Shop().Build(ResultModels.Months, new DateOnly(2024, 3, 31));
        IReadOnlyList<MonthFigure> months = MonthFigure.Table(database);
        Assert.Equal([January, new(2024, 2, 1), new(2024, 3, 1)], months.Select(m => m.Month));
        Assert.Equal([4L, 0L, 1L], months.Select(m => m.Calls));
        Assert.Equal((1L, 3L), (months[0].StillOpen, months[0].VisitsKnown));
        Assert.Equal(2 / 3.0, months[0].FirstVisitShare!.Value, 1e-12);
        Assert.Equal(1 / 3.0, months[0].NoPartShare!.Value, 1e-12);
        Assert.Null(months[1].FirstVisitShare);
        Assert.Equal(1, months[2].FamilyUnknown);
    }

    [Fact]
    public void Table_OpenJob_CountsForNoCauseAndNoVisit()
    {
        using Database database = Shop().Build(ResultModels.Months);
        MonthNeed[] needs = [.. MonthNeed.Table(database).Where(n => n.Month == January)];
        Assert.Equal([("drain_pump", 2L, 3L), ("none", 1L, 3L)], needs.Select(n => (n.Need, n.Calls, n.CauseKnown)));
    }

    [Fact]
    public void Families_MostCommonNeed_IgnoresJobsWithoutPart()
    {
        using Database database = Shop().Build(ResultModels.Months);
        MonthFamily family = Assert.Single(MonthFamily.Table(database));
        Assert.Equal(("NW100", 4L, 4L, "drain_pump"), (family.ModelFamily, family.Calls, family.FamilyKnown, family.TopComponent));
    }

    // What the log has no column for is unknown, not 0 percent.
    [Fact]
    public void Table_LogThatNamesPartsOnlyAndNoVisits_SharesAreUnknown()
    {
        var shop = new SmallShop
        {
            Jobs =
            [
                new JobRow("J1", January) { ClosedOn = January, MainComponent = "drain_pump" },
                new JobRow("J2", January) { ClosedOn = January, MainComponent = "timer", Outcome = "part_ordered", FirstVisitDone = false },
            ],
        };
        using Database database = shop.Build(ResultModels.Months);
        MonthFigure month = Assert.Single(MonthFigure.Table(database));
        Assert.Equal((2L, null, 0L, null), (month.CauseKnown, month.NoPartShare, month.VisitsKnown, month.FirstVisitShare));
    }

    [Fact]
    public void Table_NoJobs_HasNoMonth()
    {
        using Database database = new SmallShop().Build(ResultModels.Months);
        Assert.Empty(MonthFigure.Table(database));
    }

    private static SmallShop Shop() => new()
    {
        Jobs =
        [
            Done("J1", new(2024, 1, 3), "drain_pump", first: true),
            Done("J2", new(2024, 1, 9), "drain_pump", first: false),
            Done("J3", new(2024, 1, 31), "none", first: true),
            new JobRow("J4", new(2024, 1, 31)) { Outcome = "unknown", FirstVisitDone = null },
            Done("J5", new(2024, 3, 1), "timer", first: true) with { ModelFamily = null },
        ],
    };

    private static JobRow Done(string id, DateOnly day, string need, bool first) =>
        new(id, day) { ClosedOn = day.AddDays(2), MainComponent = need, Visits = first ? 1 : 2, FirstVisitDone = first, AgeYears = 4 };
}
