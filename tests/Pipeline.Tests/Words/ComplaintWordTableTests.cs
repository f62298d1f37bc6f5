using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class ComplaintWordTableTests
{
    private static readonly ComplaintWordTable All = WordSets.Load(null).Complaints;
    private static readonly ComplaintWordTable Shipped = All.For(["en"]);

    [Theory]
    [InlineData("wont fill", "washer", "no_fill")]
    [InlineData("Won't fill!", "washer", "no_fill")]
    [InlineData("does not fill, also noisy", "washer", "no_fill")]
    [InlineData("very noisy and does not fill", "washer", "noise")]
    [InlineData("wtr on floor", "washer", "leak")]
    [InlineData("nto draining", "washer", "no_drain")]
    [InlineData("not coling", "refrigerator", "not_cooling")]
    [InlineData("lekaing", "dishwasher", "leak")]
    [InlineData("daed", "dryer", "no_start")]
    [InlineData("error E20, no water", "washer", "no_fill")]
    [InlineData("error E20 on display", "washer", "error_code")]
    [InlineData("urgent has small children", "washer", "other")]
    [InlineData("dad says please call", "washer", "other")]
    [InlineData("please check", null, "other")]
    [InlineData("needed this week, wall on the left, mind the step", "dishwasher", "other")]
    [InlineData("lead the dog away, key at the neighbour", "dryer", "other")]
    [InlineData("ask for mr dean, wants a quote", "washer", "other")]
    [InlineData("bought at the mall, still under plan", "refrigerator", "other")]
    [InlineData("call the day before, park in the lane", "microwave", "other")]
    [InlineData("third floor, ring twice", "range", "other")]
    [InlineData("  ", "washer", "none")]
    [InlineData("...", "washer", "none")]
    [InlineData("no ice", "washer", "other")]
    [InlineData("no ice", null, "no_ice")]
    public void Kind_TypedComplaint_KindOfItsFirstPhrase(string text, string? type, string kind) => Assert.Equal(kind, Shipped.Kind(text, type));

    [Theory]
    [InlineData("en", "machine required jump start", null, "other")]
    [InlineData("en", "heated wheel, light wont turn on", null, "light_out")]
    [InlineData("en", "it has stopped working", null, "no_start")]
    [InlineData("en", "showing code since yesterday", "washer", "error_code")]
    [InlineData("nl", "camera has stopped working", null, "no_start")]
    [InlineData("nl", "wil niet meer opstarten", null, "no_start")]
    [InlineData("en", "upper rack dirty", "dishwasher", "poor_wash")]
    [InlineData("en", "door falls open", "dishwasher", "door_problem")]
    [InlineData("en", "three cycles to dry", "dryer", "slow_dry")]
    [InlineData("en", "turned off mid cycle", "washer", "stops")]
    [InlineData("en", "glows but no flame", "range", "no_ignition")]
    [InlineData("de", "Dichtung gerissen", "refrigerator", "door_problem")]
    [InlineData("fr", "reste plein d'eau", "washer", "no_drain")]
    [InlineData("fr", "plus rien", null, "no_start")]
    [InlineData("es", "burlete roto", "refrigerator", "door_problem")]
    [InlineData("es", "sin luz en el horno", "range", "light_out")]
    [InlineData("nl", "bak loopt niet vol", "washer", "no_fill")]
    [InlineData("nl", "klep zakt", "dishwasher", "door_problem")]
    [InlineData("it", "gela la parete", "refrigerator", "frost")]
    [InlineData("pl", "uszczelka odstaje", "refrigerator", "door_problem")]
    [InlineData("pl", "d\u0142ugo pobiera wod\u0119", "washer", "slow_fill")]
    [InlineData("nl", "Brandt niet meer", "lamp", "light_out")]
    [InlineData("nl", "brandt niet meer", "range", "no_ignition")]
    [InlineData("nl", "valt soms stil", null, "stops")]
    public void Kind_WordsReadFromRealLogs_MeanWhatTheySay(string language, string text, string? type, string kind) =>
        Assert.Equal(kind, All.For([language]).Kind(text, type));

    [Theory]
    [InlineData("not noisy", "washer", "other")]
    [InlineData("no leak, does not spin", "washer", "no_spin")]
    [InlineData("does not get warm", "dryer", "no_heat")]
    [InlineData("inside gets warm", "refrigerator", "not_cooling")]
    [InlineData("does not get very warm", "refrigerator", "other")]
    public void Kind_DeniedWord_IsNotTheComplaint(string text, string type, string kind) => Assert.Equal(kind, Shipped.Kind(text, type));

    [Theory]
    [InlineData("de", "pumpt nicht ab", "washer", "no_drain")]
    [InlineData("de", "Heizt nicht mehr", "dryer", "no_heat")]
    [InlineData("de", "wird nicht warm", "refrigerator", "other")]
    [InlineData("de", "riecht stark", "microwave", "smell")]
    [InlineData("de", "laut", "dryer", "noise")]
    [InlineData("de", "laut Kunde pumpt nicht", "washer", "no_drain")]
    [InlineData("en", "dead battery", null, "other")]
    [InlineData("en", "dead battery, leaks", null, "leak")]
    [InlineData("en", "wont open", "laptop", "other")]
    [InlineData("de", "Tuer geht nicht auf", "washer", "door_problem")]
    [InlineData("de", "leckt nicht, laute Geräusche", "washer", "noise")]
    [InlineData("fr", "l'eau reste dans le tambour", "washer", "no_drain")]
    [InlineData("fr", "ne s'allume plus", "dryer", "no_start")]
    [InlineData("fr", "ne fuit pas", "dryer", "other")]
    [InlineData("es", "no enfría bien", "refrigerator", "not_cooling")]
    [InlineData("nl", "wordt niet warm", "dryer", "no_heat")]
    [InlineData("nl", "koelt niet meer", "refrigerator", "not_cooling")]
    [InlineData("it", "perde acqua", "washer", "leak")]
    [InlineData("pl", "nie grzeje", "washer", "no_heat")]
    public void Kind_LanguageOfTheFile_ItsWords(string language, string text, string? type, string kind) => Assert.Equal(kind, All.For([language]).Kind(text, type));

    [Theory]
    [InlineData("starke Reinigung", "stark reinigung")]
    [InlineData("spare parts in front", "spare parts in front")]
    public void Kind_WordOfTheLanguage_IsNoMisspelling(string text, string known) =>
        Assert.Equal("other", All.For(["en"], w => known.Split(' ').Contains(w) || w == "starke").Kind(text, "microwave"));

    [Fact]
    public void Kind_TypeOfTheShopsOwn_HasNoKindsLimitedToOthers() => Assert.Equal("other", Shipped.Kind("too cold", "hair_dryer"));

    [Fact]
    public void Read_ShopsOwnWords_ComeFirstAndMayClearTheShippedOnes()
    {
        string shipped = "complaint_kind,appliance_types,words\nno_fill,washer,no fill\nleak,*,drip*\n";
        string own = "complaint_kind,appliance_types,words\nno_fill,,\nno_fill,*,thirsty\nhaunted,*,no fill\n";
        var words = new ComplaintWordTable(WordTable.Read(shipped, own, "complaint_kind", "complaint-words.csv"));
        Assert.Equal("no_fill", words.Kind("is thirsty", "dryer"));
        Assert.Equal("haunted", words.Kind("no fill", "washer"));
        Assert.Equal("leak", words.Kind("dripping", "washer"));
    }

    [Fact]
    public void Read_TableWithoutItsColumns_EveryMissingColumnNamed()
    {
        BadInputException bad = Assert.Throws<BadInputException>(() => WordTable.Read("complaint_kind,words\n", "a,b\n1,2\n", "complaint_kind", "complaint-words.csv"));
        Assert.Equal(2, bad.Faults.Count);
    }
}
