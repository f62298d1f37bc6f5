using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class ComplaintWordTableTests
{
    private static readonly ComplaintWordTable Shipped = WordSets.Load(null).Complaints;

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
