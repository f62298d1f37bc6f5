using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Tests.Privacy;

public sealed class VanNameTests
{
    private static readonly IdentityKey Key = new([.. Enumerable.Range(0, 32).Select(i => (byte)i)]);

    [Theory]
    [InlineData("Tilly", "TI")]
    [InlineData("TILLY", "TI")]
    [InlineData("Marius Quenthorpe", "MQ")]
    [InlineData("Quenthorpe, Marius", "QM")]
    [InlineData("Tilly's van", "TI van")]
    [InlineData("van Tilly", "van TI")]
    [InlineData("Tilly 2", "TI 2")]
    [InlineData("1", "1")]
    [InlineData("Van 2", "Van 2")]
    [InlineData("V-03", "V-03")]
    [InlineData("spare", "spare")]
    public void WithInitials_NameOfAVan_NamesNobody(string van, string expected) => Assert.Equal(expected, VanName.WithInitials(van));

    [Fact]
    public void Create_SameInitials_NumberedWhateverTheOrder()
    {
        string[] vans = [.. new[] { "Tilly", "Timothy", "Marius", "3" }.Select(v => VanName.Key(v, Key))];
        var labels = VanLabels.Create(vans);
        Assert.Equal(["MA", "TI 1", "TI 2"], labels.Labels.Values.Order(StringComparer.Ordinal));
        Assert.Equal(labels.Labels.OrderBy(l => l.Key), VanLabels.Create(vans.Reverse()).Labels.OrderBy(l => l.Key));
    }

    [Fact]
    public void Create_InitialsAreAnotherVansName_Numbered() =>
        Assert.Equal(["MA 2"], VanLabels.Create([VanName.Key("Marius", Key), "MA", "MA 1"]).Labels.Values);

    [Fact]
    public void Key_SameNameInOtherCase_SameVan() => Assert.Equal(VanName.Key("Tilly", Key), VanName.Key("TILLY", Key));

    [Fact]
    public void Name_SettingsByNameOrByLabel_OneVan()
    {
        var labels = VanLabels.Create([VanName.Key("Tilly", Key)]);
        ShopVan van = Assert.Single(labels.Name([new ShopVan("Tilly", 900, null) { Technicians = ["Tilly Ebbersley"] }, new ShopVan("TI", 700, null)], Key));
        Assert.Equal(("TI", 900m, "TE"), (van.Van, van.Budget, Assert.Single(van.Technicians)));
    }
}
