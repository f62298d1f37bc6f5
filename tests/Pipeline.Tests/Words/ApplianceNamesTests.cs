using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class ApplianceNamesTests
{
    private static readonly ApplianceNames Names = WordSets.Load(null).Appliances;

    [Theory]
    [InlineData("large_home_electrical", true)]
    [InlineData("electroménager", true)]
    [InlineData("hair_dryer", false)]
    [InlineData("washer", false)]
    [InlineData(null, false)]
    public void IsGroup_NameOfManyAppliances_IsNone(string? type, bool isGroup) => Assert.Equal(isGroup, ApplianceNames.IsGroup(type));

    [Theory]
    [InlineData("gas")]
    [InlineData("Stand")]
    [InlineData("Einbau")]
    [InlineData("mini")]
    public void Find_QualifierAlone_NamesNoType(string cell) => Assert.Null(Names.Find(cell));

    [Theory]
    [InlineData("Gasherd", "range")]
    [InlineData("Einbaukühlschrank", "refrigerator")]
    public void Find_QualifierGluedToType_NamesTheType(string cell, string type) => Assert.Equal(type, Names.Find(cell));
}
