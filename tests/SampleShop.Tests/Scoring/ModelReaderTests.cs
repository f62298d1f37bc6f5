using PartsSignal.SampleShop.Scoring;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class ModelReaderTests
{
    private static readonly ModelFamily Family = Catalog.World.Families.Single(f => f.Code == "VE-WE");
    private static readonly string Number = Family.Models[0].Number;

    [Fact]
    public void Families_DashesLostAndOForZero_FindsTheFamily() =>
        Assert.Equal([Family], ModelReader.Families(Number.Replace("-", "", StringComparison.Ordinal).Replace('0', 'O'), "", "washer"));

    [Fact]
    public void Families_DigitDropped_StillFindsTheFamily() =>
        Assert.Contains(Family, ModelReader.Families(Number.Remove(3, 1), "", "washer"));

    [Fact]
    public void Families_NothingTyped_GivesAllOfTheBrand() =>
        Assert.All(ModelReader.Families("", "Velquora", "washer"), f => Assert.Equal("Velquora", f.Brand.Name));

    [Fact]
    public void Families_NothingTypedAtAll_GivesAllOfTheType() =>
        Assert.Equal(Catalog.World.FamiliesByType["washer"].Count, ModelReader.Families("", "", "washer").Count);
}
