using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Understanding.Evidence;

public sealed class HeaderLexiconTests
{
    [Theory]
    [InlineData("Date closed", "closed_on")]
    [InlineData("DateClosed", "closed_on")]
    [InlineData("date_closed", "closed_on")]
    [InlineData("abgeschlossen am", "closed_on")]
    [InlineData("Clôturé le", "closed_on")]
    [InlineData("Auftragsnummer", "job_id")]
    [InlineData("Nº de serie", "serial")]
    [InlineData("Hersteller", "brand")]
    [InlineData("Liefer-Datum", "received_on")]
    [InlineData("klachtomschrijving", "complaint")]
    [InlineData("Matricola", "serial")]
    [InlineData("opis usterki", "complaint")]
    [InlineData("mdl", "model")]
    [InlineData("Geräteart", "appliance_type")]
    [InlineData("Geraeteart", "appliance_type")]
    public void Match_HeaderOfAnyLanguageAndForm_NamesItsFieldBest(string header, string field)
    {
        double[] scores = HeaderLexicon.Shipped.Match(header);
        double own = scores[((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(field)];
        Assert.True(own >= 0.6, $"{header} is {field} by {own:0.00}");
        Assert.Equal(scores.Max(), own, 3);
    }

    [Fact]
    public void Match_UnknownWord_SaysNothing() => Assert.All(HeaderLexicon.Shipped.Match("Qwxzqp"), s => Assert.Equal(0, s));

    [Fact]
    public void Match_PhrasesLeftOut_AreNotKnown()
    {
        var small = new HeaderLexicon("field,language,words\nbrand,en,make|brand\n", new HashSet<string> { "make" });
        Assert.Equal([0.0], small.Match("Make"));
        Assert.Equal([1.0], small.Match("Brand"));
    }
}
