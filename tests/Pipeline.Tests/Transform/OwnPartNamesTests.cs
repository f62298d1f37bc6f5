using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Descriptions of one component that are written in several ways.</summary>
public sealed class OwnPartNamesTests
{
    [Fact]
    public void All_SameWordsForSeveralBrands_AreOneComponent() =>
        Assert.Equal(["mahlwerk", "mahlwerk", "mahlwerk", "steckling_velt"], Names("mahlwerk br\u00fcn", "mahlwerk velt", "mahlwerk 3", "steckling velt"));

    [Fact]
    public void All_WordThatIsABrandElsewhereButNeverStandsWithoutIt_IsKept() =>
        Assert.Equal(["velt_klapp", "thermo_klapp"], Names("velt klapp", "thermo klapp"));

    [Fact]
    public void All_WordsWithADot_AreTheWordsTheyBegin()
    {
        Assert.Equal(["v\u00e1lvula_seguridad", "v\u00e1lvula_seguridad"], Names("v\u00e1lvula seguridad", "v\u00e1lvula seg."));
        // Without a dot it may be another word, and with two candidates nobody can tell.
        Assert.Equal(["valvula_seguridad", "valvula_seg"], Names("valvula seguridad", "valvula seg"));
        Assert.Equal(["junta_puerta", "junta_puente", "junta_pue"], Names("junta puerta", "junta puente", "junta pue."));
    }

    [Fact]
    public void All_CommonestWriting_GivesTheName()
    {
        DescribedPart[] parts = [new("hatch lock", 2), new("lock hatch", 5)];
        Assert.Equal(["lock_hatch", "lock_hatch"], new OwnPartNames(parts, []).All.Select(n => n.Name));
        DescribedPart[] accents = [new("elements secheuse", 2), new("\u00e9l\u00e9ment s\u00e9cheuse", 2), new("element secheuse", 1)];
        Assert.Equal(["elements_secheuse", "\u00e9l\u00e9ment_s\u00e9cheuse", "\u00e9l\u00e9ment_s\u00e9cheuse"], new OwnPartNames(accents, []).All.Select(n => n.Name));
    }

    private static IEnumerable<string?> Names(params string[] descriptions) =>
        new OwnPartNames([.. descriptions.Select(d => new DescribedPart(d, 1))], ["Br\u00fcnhoff", "Veltmark"]).All.Select(n => n.Name);
}
