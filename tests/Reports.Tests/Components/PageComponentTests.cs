using System.Net;
using System.Text.RegularExpressions;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;
using PartsSignal.Reports.Phone;
using PartsSignal.Reports.Tests.Monthly;

namespace PartsSignal.Reports.Tests.Components;

/// <summary>Pages that are components: what they say, and that they stand in the same frame as the monthly report.</summary>
public sealed partial class PageComponentTests
{
    private const string Evil = "<b>Millrace</b> & 'Sons'\"";

    private static readonly IndexedMonth[] Months =
    [
        new(new DateOnly(2026, 4, 1), 12, Estimate.From(0.75, 0.5, 0.9)),
        new(new DateOnly(2026, 6, 1), 1300, Estimate.None("no visits recorded")) { Written = true },
    ];

    [Fact]
    public void MonthIndex_Months_StandNewestFirstAndOnlyWrittenReportsAreLinked()
    {
        string page = MonthIndex.Render(Evil, new DateOnly(2026, 6, 28), Months);
        string[] cells = [.. Cell().Matches(page).Select(m => Plain(m.Groups[1].Value))];
        Assert.Equal(["June 2026", "1,300", "no visits recorded", "", "April 2026", "12", "75.0\u00A0% (50.0\u201390.0)", "partssignal report --month 2026-04"], cells);
        Assert.Equal(["2026-06/index.html"], Link().Matches(page).Select(m => m.Groups[1].Value));
        Assert.Contains("As known on June 28, 2026.", page, StringComparison.Ordinal);
        Assert.Contains("No month has a call yet.", MonthIndex.Render("Mill", new DateOnly(2026, 6, 28), []), StringComparison.Ordinal);
    }

    [Fact]
    public void CallPage_WithoutAnswer_ShowsTheQuestionAsAskedAndWhatIsWrongWithIt()
    {
        var view = new CallView(Evil, new DateOnly(2026, 6, 28), new AskedQuestion(Evil, "drips", "washer", 7.5), null)
        {
            Faults = ["Age must be between 0 and 80 years."],
            OwnTypes = ["bread_slicer"],
            Old = "The files end long ago.",
        };
        string page = PageRenderer.Render<CallPage>(view);
        Assert.Contains("value=\"" + WebUtility.HtmlEncode("<b>"), page, StringComparison.Ordinal);
        Assert.Contains("value=\"7.5\"", page, StringComparison.Ordinal);
        Assert.Matches("<option value=\"washer\" selected[^>]*>washer</option>", page);
        Assert.Contains("<option value=\"bread_slicer\">bread slicer</option>", page, StringComparison.Ordinal);
        Assert.Contains("role=\"alert\">Age must be between 0 and 80 years.</p>", page, StringComparison.Ordinal);
        Assert.Contains("role=\"status\">The files end long ago.</p>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<details", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Pages_OfEveryKind_StandInTheSameFrame()
    {
        string index = MonthIndex.Render(Evil, new DateOnly(2026, 6, 28), Months);
        string call = PageRenderer.Render<CallPage>(new CallView(Evil, null, new AskedQuestion("", "", "", null), null));
        string report = MonthlyPage.Render(SampleMonth.Full().Report());
        Assert.Equal(Head(report), Head(index));
        Assert.Equal(Head(report), Head(call).Replace("form-action 'self'", "form-action 'none'", StringComparison.Ordinal));
        foreach (string page in new[] { index, call })
        {
            Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
            Assert.DoesNotContain('\r', page);
            Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
            Assert.DoesNotContain("<b>", page, StringComparison.Ordinal);
            string style = page[(page.IndexOf("<style>", StringComparison.Ordinal) + 7)..page.IndexOf("</style>", StringComparison.Ordinal)];
            Assert.Contains(Page.PolicyHash(style), WebUtility.HtmlDecode(page), StringComparison.Ordinal);
            Assert.Contains(Page.PolicyHash(style), ServedPolicy.Text, StringComparison.Ordinal);
        }

        Assert.Equal(index, MonthIndex.Render(Evil, new DateOnly(2026, 6, 28), Months));
    }

    // Its elements and what they say, apart from title, style sheet and the hash that belongs to it.
    private static string Head(string page)
    {
        string head = page[page.IndexOf("<head>", StringComparison.Ordinal)..page.IndexOf("</head>", StringComparison.Ordinal)];
        string apart = Apart().Replace(WebUtility.HtmlDecode(head), "");
        return Blank().Replace(apart, ">").Replace(" />", ">", StringComparison.Ordinal).Replace("/>", ">", StringComparison.Ordinal);
    }

    private static string Plain(string cell) => WebUtility.HtmlDecode(Tag().Replace(cell, "")).Trim();

    [GeneratedRegex("<t[hd](?: scope=\"row\"| class=\"num\")?>(.*?)</t[hd]>", RegexOptions.Singleline)]
    private static partial Regex Cell();

    [GeneratedRegex("<a href=\"([^\"]*)\"")]
    private static partial Regex Link();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("<title>.*?</title>|<style>.*?</style>|'sha256-[^']*'", RegexOptions.Singleline)]
    private static partial Regex Apart();

    [GeneratedRegex(">\\s+")]
    private static partial Regex Blank();
}
