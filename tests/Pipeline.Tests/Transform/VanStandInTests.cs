using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Where a shop names no van, technicians stand in for vans, or one van for all jobs.</summary>
public sealed class VanStandInTests
{
    [Fact]
    public void Jobs_OnlyTechniciansNamed_StandForVans()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { Technician = "T1" }, new StagedJob("J2") { Technician = "T2" }, new StagedJob("J3")).Combine();
        Assert.Equal(["J1|T1|technician", "J2|T2|technician", "J3|-|-"], shop.Rows("from jobs select job_id, van, van_basis order by 1"));
        Assert.Equal("Your files name no vans, so each technician is treated as one van.", VanStandIn.Of(shop.Database)?.Sentence);
    }

    [Fact]
    public void Jobs_NeitherNamed_OneVanStandsForAll()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1"), new StagedJob("J2")).Combine();
        Assert.Equal(["shop|one|2"], shop.Rows("from jobs select van, van_basis, count(*) group by all"));
        Assert.Equal("Your files name no vans and no technicians, so all jobs are treated as one van, 'shop'.", VanStandIn.Of(shop.Database)?.Sentence);
    }

    [Fact]
    public void Jobs_VanNamedByTheLog_NothingStandsIn()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { Technician = "T1", Van = "7" }, new StagedJob("J2") { Technician = "T2" }).Combine(new TransformOptions { Vans = [new ShopVan("8", null, null)] });
        Assert.Equal(["7|named", "-|-"], shop.Rows("from jobs select van, van_basis order by job_id"));
        Assert.Null(VanStandIn.Of(shop.Database));
    }

    [Fact]
    public void Jobs_TechniciansOfVansGiven_AreTheirVans()
    {
        using var shop = new TransformShop();
        ShopVan Crewed(string van, params string[] technicians) => new(van, null, null) { Technicians = technicians };
        shop.Add(
            new StagedJob("J1") { Technician = "Hanna" }, new StagedJob("J2") { Technician = "Piet" }, new StagedJob("J3") { Technician = "Both" },
            new StagedJob("J4") { Technician = "Nobody's" }, new StagedJob("J5") { Technician = "Hanna", Van = "9" })
            .Combine(new TransformOptions { Vans = [Crewed("1", " HANNA", "Both"), Crewed("2", "Piet", "Both")] });
        Assert.Equal(["J1|1", "J2|2", "J3|-", "J4|-", "J5|9"], shop.Rows("from jobs select job_id, van order by 1"));
    }

    [Fact]
    public void Jobs_VansListedAndNoneTold_AreDealtInTurn()
    {
        using var shop = new TransformShop();
        shop.Add([.. Enumerable.Range(1, 60).Select(i => new StagedJob($"J{i:00}") { Technician = "T1", OpenedOn = new DateOnly(2024, 1, 1).AddDays((i - 1) / 2) })])
            .Combine(new TransformOptions { Vans = [new ShopVan("A", null, null), new ShopVan("B", null, null), new ShopVan("C", null, null)] });
        Assert.Equal(["A|20", "B|20", "C|20"], shop.Rows("from jobs select van, count(*) where van_basis = 'dealt' group by 1 order by 1"));
        Assert.True(VanStandIn.Of(shop.Database)!.IsVan);
    }

    [Fact]
    public void Jobs_VansCountedAndNoneTold_AreDealtToThem()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { Technician = "T1" }, new StagedJob("J2") { Technician = "T1" }).Add(new StagedCount("V1", "P1", 2) { SourceOrder = 1 }, new StagedCount("V2", "P1", 1) { SourceOrder = 1 }).Combine();
        Assert.Equal(["V1|1", "V2|1"], shop.Rows("from jobs select van, count(*) group by 1 order by 1"));
    }
}
