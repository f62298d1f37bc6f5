using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;

namespace PartsSignal.Analysis.Tests.VanPlan;

public sealed class VanGroupTests
{
    private static readonly DateOnly Day = new(2026, 6, 30);

    [Fact]
    public void Of_FewVans_IsTheWholeShopWithJobsOfNoVan()
    {
        using Database database = Store(4);
        VanGroup only = Assert.Single(VanGroup.Create(database, Day, new VanPlanOptions(), most: 4));
        Assert.Null(only.Vans);
        Assert.Equal(5, ShopDataReader.Read(database, Day, only)!.Jobs.Count);
    }

    [Fact]
    public void Of_ManyVans_EveryVanAndItsJobsStandInOneGroup()
    {
        using Database database = Store(5);
        IReadOnlyList<VanGroup> groups = VanGroup.Create(database, Day, new VanPlanOptions(), most: 2);
        Assert.Equal(["v1 v2", "v3 v4", "v5"], groups.Select(g => string.Join(' ', g.Vans!.Order(StringComparer.Ordinal))));
        ShopData first = ShopDataReader.Read(database, Day, groups[0])!;
        Assert.Equal(
            ["j1 j2", "j3 j4", "j5"],
            groups.Select(g => string.Join(' ', ShopDataReader.Other(first, database, g).Jobs.Select(j => j.JobId).Order(StringComparer.Ordinal))));
        Assert.Equal(["v3", "v4"], ShopDataReader.Other(first, database, groups[1]).Counts.Select(c => c.Van));
    }

    [Fact]
    public void Options_VansWithLimits_KeepThem()
    {
        using Database database = Store(1);
        var shop = new VanPlanOptions { Vans = [new("b", 700m, 10), new("a", 900m, 20), new("c", 100m, 30)] };
        IReadOnlyList<VanGroup> groups = VanGroup.Create(database, Day, shop, most: 2);
        Assert.Equal(["b 700, a 900", "c 100"], groups.Select(g => string.Join(", ", g.Options(shop).Vans.Select(v => $"{v.Van} {v.Budget}"))));
    }

    [Fact]
    public void Options_VansOfTheLog_GetTheDefaults()
    {
        using Database database = Store(3);
        var shop = new VanPlanOptions { DefaultBudget = 55m, DefaultSpace = 7 };
        Assert.Equal([new VanLimits("v3", 55m, 7)], VanGroup.Create(database, Day, shop, most: 2)[1].Options(shop).Vans);
    }

    private static Database Store(int vans)
    {
        Database database = Database.Open(new DatabaseOptions { Threads = 1 });
        foreach (string table in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, table);
        }

        for (int van = 1; van <= vans; van++)
        {
            Job(database, $"j{van}", $"v{van}");
            database.Execute("insert into van_counts values ($van, 'A', 'A', 'A', 3, date '2026-06-01', 'f', 1)", ("van", $"v{van}"));
        }

        Job(database, "j0", null);
        return database;
    }

    private static void Job(Database database, string id, string? van) => database.Execute(
        """
        insert into jobs by name select $id as job_id, date '2026-06-01' as opened_on, 'open' as closing_basis, $van as van, 'washer' as appliance_type, 'unknown' as model_basis,
            'unknown' as age_basis, 'no_fill' as complaint_kind, 'unknown' as outcome, 'jobs.csv' as source_file, 1 as source_line
        """,
        ("id", id), ("van", van));
}
