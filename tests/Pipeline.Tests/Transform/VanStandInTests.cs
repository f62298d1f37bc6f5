using PartsSignal.Analysis.VanPlan;
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
        Assert.Equal("Your files name no vans, so each technician is treated as one van.", VanStandIn.Sentence(shop.Database));
    }

    [Fact]
    public void Jobs_NeitherNamed_OneVanStandsForAll()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1"), new StagedJob("J2")).Combine();
        Assert.Equal(["shop|one|2"], shop.Rows("from jobs select van, van_basis, count(*) group by all"));
        Assert.Equal("Your files name no vans and no technicians, so all jobs are treated as one van, 'shop'.", VanStandIn.Sentence(shop.Database));
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void Jobs_VansNamedSomewhere_NothingStandsIn(bool inLog, bool inSettings)
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { Technician = "T1", Van = inLog ? "7" : null }, new StagedJob("J2") { Technician = "T2" })
            .Combine(new TransformOptions { VansListed = inSettings });
        Assert.Equal([inLog ? "7|named" : "-|-", "-|-"], shop.Rows("from jobs select van, van_basis order by job_id"));
        Assert.Null(VanStandIn.Sentence(shop.Database));
    }
}
