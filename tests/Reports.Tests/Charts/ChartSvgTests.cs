using System.Text.RegularExpressions;

namespace PartsSignal.Reports.Tests.Charts;

public sealed class ChartSvgTests
{
    [Fact]
    public void Draw_EveryKind_GivesSameBytesTwice() => Assert.Equal(ChartGallery.PageText(), ChartGallery.PageText());

    [Fact]
    public void Draw_SeveralOnOnePage_IdsAreUniqueAndReferencesResolve()
    {
        string page = ChartGallery.PageText();
        string[] ids = [.. Regex.Matches(page, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value)];
        Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.All(Regex.Matches(page, "url\\(#([^)]+)\\)"), m => Assert.Contains(m.Groups[1].Value, ids));
    }

    [Fact]
    public void Draw_EveryKind_HasTextNameAndDescription()
    {
        foreach (string figure in ChartGallery.All().Select(n => n.ToString()))
        {
            Assert.Matches("<title id=\"[^\"]+\">[^<]+</title><desc id=\"[^\"]+\">[^<]+</desc>", figure);
            Assert.True(Regex.Count(figure, "<text ") >= 8, "axis marks and titles are text");
            Assert.DoesNotContain("<text/>", figure, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", figure, StringComparison.Ordinal);
            Assert.Contains("figcaption", figure, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Draw_NoFontNamed_LabelsTakeThePagesOwn() => Assert.DoesNotContain("font-family=", ChartGallery.PageText(), StringComparison.Ordinal);

    [Fact]
    public void Draw_MarkupInNames_IsShownAsTyped()
    {
        string page = ChartGallery.PageText();
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;window", page, StringComparison.Ordinal);
    }
}
