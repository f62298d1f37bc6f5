using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Analysis.Tests.CrossReference;

public sealed class NumberSuggestionsTests
{
    private static readonly NumberSuggestions Known = new(
        [.. new[] { "AB-2001", "AB-2010", "AB-2100", "XB-2001", "0050353", "S0B8-Z2", "K9" }.Select(n => (CompactKey.From(n), n))]);

    [Theory]
    [InlineData("AB2O01", "AB-2001")] // a look-alike before any other single edit
    [InlineData("50353", "0050353")] // leading zeros a spreadsheet ate
    [InlineData("5OBBZ2", "S0B8-Z2")]
    [InlineData("AB2011", "AB-2001,AB-2010")]
    [InlineData("AB0201", "AB-2001")] // two neighbours swapped
    [InlineData("QQQQQQ", "")]
    [InlineData("K8", "K9")] // short numbers: one edit
    [InlineData("M8", "")]
    [InlineData("", "")]
    public void Closest_TypedNumber_RanksByDistance(string typed, string expected)
    {
        string[] wanted = expected.Split(',', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(wanted, Known.Closest(typed).Select(s => s.Number).Take(wanted.Length == 0 ? 1 : wanted.Length));
    }

    [Fact]
    public void Closest_Many_GivesTheMostAskedForInOrderOfEdits()
    {
        IReadOnlyList<NumberSuggestion> close = Known.Closest("AB2000", 2);
        Assert.Equal(2, close.Count);
        Assert.True(close[0].Edits <= close[1].Edits);
        Assert.All(close, s => Assert.InRange(s.Similarity, 0, 1));
    }

    [Fact]
    public void Closest_EveryKnownNumber_IsItsOwnFirstSuggestion() =>
        Assert.All(new[] { "AB-2001", "AB-2010", "0050353", "K9" }, n => Assert.Equal((n, 0), (Known.Closest(CompactKey.From(n))[0].Number, Known.Closest(CompactKey.From(n))[0].Edits)));

    [Fact]
    public void Closest_NoneAskedFor_IsACallersFault() => Assert.Throws<ArgumentOutOfRangeException>(() => Known.Closest("AB2001", 0));
}
