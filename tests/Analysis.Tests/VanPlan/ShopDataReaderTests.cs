using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;
using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class ShopDataReaderTests
{
    [Fact]
    public void Read_EmptyStore_IsNullWithoutADayAndEmptyWithOne()
    {
        using Database database = Store();
        Assert.Null(ShopDataReader.Read(database, null));
        Assert.Empty(ShopDataReader.Read(database, new DateOnly(2026, 1, 1))!.Jobs);
    }

    [Fact]
    public void Read_Counts_TakesTheNewestCountOfEachVan()
    {
        using Database database = Store();
        database.Execute("insert into van_counts values ('1', 'A', 'A', 'A', 3, date '2025-01-01', 'f', 1), ('1', 'B', 'B', 'OLD-B', 2, date '2026-01-01', 'f', 2), ('1', 'B', 'B', 'OLD-B', 1, date '2026-01-01', 'f', 3)");
        ShopCount count = Assert.Single(ShopDataReader.Read(database, new DateOnly(2026, 2, 1))!.Counts);
        Assert.Equal(("B", "OLD-B", 3), (count.PartNumber, count.FittedNumber, count.OnHand));
    }

    [Fact]
    public void Read_LastUses_CountEveryVisitUpToTheDay()
    {
        static DateOnly Day(int month) => new(2026, month, 1);
        using Database database = new SmallShop
        {
            Jobs =
            [
                new("J1", Day(1)) { Van = "1" }, new("J2", Day(3)) { Van = "2", VisitReason = "preventive" },
                new("J3", Day(9)) { Van = "1" }, new("J4", Day(2)) { Van = "1", VisitReason = "failure" },
            ],
            Parts = [new("J1", 1, "P1", "pump"), new("J2", 1, "P1", "pump"), new("J3", 1, "P1", "pump"), new("J4", 1, null, "pump")],
        }.Open();
        ShopData data = ShopDataReader.Read(database, Day(6))!;
        Assert.Equal([new ShopLastUse("P1", Day(3))], data.LastUses);
        Assert.DoesNotContain(data.Jobs, j => j.JobId == "J2");
    }

    [Fact]
    public void NumbersOn_Day_KnowsOnlyArrowsUntilThen()
    {
        using Database database = Store();
        database.Execute("insert into supersessions values ('A', 'B', date '2025-01-01', 'replaces', 1, 'f', 1), ('B', 'C', date '2026-01-01', 'replaces', 1, 'f', 2)");
        ShopData data = ShopDataReader.Read(database, new DateOnly(2026, 6, 1))!;
        Assert.Equal("B", data.NumbersOn(new DateOnly(2025, 6, 1))["A"]);
        Assert.Equal("C", data.NumbersOn(new DateOnly(2026, 6, 1))["A"]);
        Assert.Empty(data.NumbersOn(new DateOnly(2024, 6, 1)));
    }

    private static Database Store()
    {
        Database database = Database.Open(new DatabaseOptions { Threads = 1 });
        foreach (string table in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, table);
        }

        return database;
    }
}
