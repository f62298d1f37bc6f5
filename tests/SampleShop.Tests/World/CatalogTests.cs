using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.World;

public sealed class CatalogTests
{
    private static readonly Catalog Shop = Catalog.World;

    [Fact]
    public void World_AsPlanned_IsLargeEnough()
    {
        Assert.True(Shop.Families.Count >= 40);
        Assert.True(Shop.Brands.Count >= 6);
        Assert.True(Shop.FamiliesByType.Count >= 6);
        Assert.True(Shop.Parts.Count >= 300);
        Assert.InRange(Shop.Parts.Sum(p => p.Versions.Count - 1), 200, 600);
        Assert.All(Shop.Families, f => Assert.InRange(f.Models.Count, 2, 8));
        Assert.Equal(2, Shop.Parts.Count(p => p.KitPart is not null && p.KitDay < ShopCalendar.AsOf));
        Assert.Single(Shop.Parts, p => p.EndDay < ShopCalendar.AsOf);
    }

    [Fact]
    public void PartNumbers_OfAllVersions_AreUnique()
    {
        string[] numbers = [.. Shop.Parts.SelectMany(p => p.Versions).Select(v => v.Number)];
        Assert.Equal(numbers.Length, numbers.Distinct().Count());
    }

    [Fact]
    public void ModelNumbers_OfAllFamilies_AreUnique()
    {
        string[] numbers = [.. Shop.Families.SelectMany(f => f.Models).Select(m => m.Number)];
        Assert.Equal(numbers.Length, numbers.Distinct().Count());
    }

    [Fact]
    public void ComplaintOdds_OfEveryCause_SumToOne() =>
        Assert.All(Shop.Families.SelectMany(f => f.Causes), c => Assert.Equal(1, c.Cause.Odds.Sum(o => o.Share), 1e-9));

    [Fact]
    public void Models_WithinTheirFamily_CoverItsYears() =>
        Assert.All(Shop.Families, f =>
        {
            Assert.Equal(f.LaunchMonth, f.Models.Min(m => m.FirstMonth));
            Assert.Equal(f.StopMonth, f.Models.Max(m => m.LastMonth));
        });

    [Fact]
    public void VersionOn_DayBeforeAndAfterAChange_GivesOldAndNew()
    {
        PartLineage part = Shop.Parts.First(p => p.Versions.Count > 1);
        int day = part.Versions[1].EffectiveDay;
        Assert.Equal(0, part.VersionOn(day - 1));
        Assert.Equal(1, part.VersionOn(day));
    }
}
