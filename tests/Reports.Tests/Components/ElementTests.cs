using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Tests.Components;

public sealed class ElementTests
{
    [Theory]
    [InlineData("<b>&\"'", "&lt;b&gt;&amp;&quot;&#39;")]
    [InlineData("Küpper £12", "Küpper £12")]
    [InlineData("a\u0000b\u0007", "a\uFFFDb\uFFFD")]
    public void Write_Text_IsEscaped(string text, string expected) => Assert.Equal(expected, Node.Group(text).ToString());

    [Fact]
    public void Write_HalfOfAPair_BecomesAReplacement() =>
        Assert.Equal("\uD83D\uDD27 \uFFFD", Node.Group("\uD83D\uDD27 \uD83D").ToString());

    [Fact]
    public void Write_AttributeValue_CannotLeaveItsQuotes() =>
        Assert.Equal("<td class=\"&quot; onload=&quot;x\">1</td>", new Element("td", "1").Class("\" onload=\"x").ToString());

    [Theory]
    [InlineData("onclick", "x")]
    [InlineData("style", "x")]
    [InlineData("src", "x")]
    [InlineData("href", "javascript:x")]
    [InlineData("href", "//example.org")]
    [InlineData("href", "http://example.org")]
    [InlineData("a b", "x")]
    public void With_AttributeThatRunsOrLeaves_IsRefused(string name, string value) =>
        Assert.Throws<ArgumentException>(() => new Element("a").With(name, value));

    [Fact]
    public void Text_OfRandomStrings_NeverHoldsMarkup() =>
        CsCheck.Gen.String.ForAll(text => !Node.Group(text).ToString().AsSpan().ContainsAny('<', '>', '"'));
}
