using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Phone;

namespace PartsSignal.EndToEnd.Tests.PhonePage;

public sealed class PhonePageTests(BrowserHost browser) : IClassFixture<BrowserHost>
{
    private static readonly DateOnly Today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);

    [BrowserFact]
    public async Task Odds_FiveHundredQuestions_EqualThePredictorsWithinRounding()
    {
        await using OpenedPage page = await browser.OpenTextAsync(LookupPage.Render(InventedPhone.Data(Today)), 390);
        foreach (Call call in InventedPhone.Questions(500))
        {
            double[] expected = InventedPhone.Model.Odds(call);
            double[] shown = await page.Page.EvaluateAsync<double[]>("q => window.lookupOdds(JSON.parse(q))", PhoneQuestion.Of(call));
            Assert.Equal(expected.Length, shown.Length);
            for (int k = 0; k < expected.Length; k++)
            {
                Assert.Equal(expected[k], shown[k], 0.002);
            }
        }
    }

    [BrowserFact]
    public async Task Odds_PredictorThatIsNoSumOfWeights_AnswersFromItsTablesAndSaysSo()
    {
        LookupData data = InventedPhone.Data(Today) with
        {
            Weights = null,
            Tables = new Dictionary<string, IReadOnlyList<int>> { ["K41/no_fill"] = [100, 0, 650, 250], ["washer/no_fill"] = [250, 0, 250, 500] },
        };
        await using OpenedPage page = await browser.OpenTextAsync(LookupPage.Render(data), 390);
        async Task<double[]> OddsOf(string? family) => await page.Page.EvaluateAsync<double[]>(
            "q => window.lookupOdds(JSON.parse(q))", PhoneQuestion.Of(new Call { ApplianceType = "washer", ModelFamily = family, ComplaintKind = "no_fill" }));
        Assert.Equal<double[]>([0.1, 0, 0.65, 0.25], await OddsOf("K41"));
        Assert.Equal<double[]>([0.25, 0, 0.25, 0.5], await OddsOf("K99"));
        await page.Page.FillAsync("#model", "k41");
        await page.Page.PressAsync("#model", "Enter");
        await page.Page.FillAsync("#complaint", "no water");
        string answer = await page.Page.InnerTextAsync("#answer");
        Assert.Contains("65 % inlet valve", answer, StringComparison.Ordinal);
        Assert.Contains("usual call of this family", answer, StringComparison.Ordinal);
        Assert.Contains(Safety.Caution, await page.Page.InnerTextAsync("footer"), StringComparison.Ordinal);
        await page.AssertSoundAsync();
    }

    [BrowserFact]
    public async Task Lookup_EverythingToldThatThePageAsks_ChangesTheAnswer()
    {
        await using OpenedPage page = await browser.OpenTextAsync(LookupPage.Render(InventedPhone.Data(Today)), 390);
        await page.Page.FillAsync("#model", "k41");
        await page.Page.PressAsync("#model", "Enter");
        await page.Page.FillAsync("#complaint", "leaks");
        string last = await page.Page.InnerTextAsync("#answer");
        await page.Page.ClickAsync("summary");
        async Task Changes(Func<Task> tell)
        {
            await tell();
            string now = await page.Page.InnerTextAsync("#answer");
            Assert.NotEqual(last, now);
            last = now;
        }

        await Changes(() => page.Page.FillAsync("#built", "2023-05"));
        await Changes(() => page.Page.FillAsync("#code", "e 20"));
        await Changes(() => page.Page.FillAsync("#earlier", "20"));
        await Changes(async () => await page.Page.SelectOptionAsync("#earlier-need", "drain_pump"));
        await Changes(async () => await page.Page.SelectOptionAsync("#customer", "contract"));
        await page.ShootAsync("phone-more-390");
        await page.AssertSoundAsync();
        await page.Page.ClickAsync("#clear");
        Assert.Contains("Pick a model", await page.Page.InnerTextAsync("#answer"), StringComparison.Ordinal);
    }

    [BrowserFact]
    public Task Lookup_TypedOnPhone_AnswersAndIsSound() => TypeAsync(390, "k41 220b");

    [BrowserFact]
    public Task Lookup_TypedOnDesktop_AnswersAndIsSound() => TypeAsync(1280, "K4l220");

    [BrowserFact]
    public async Task Lookup_LookAlikeLetters_FindTheModel()
    {
        await using OpenedPage page = await browser.OpenTextAsync(LookupPage.Render(InventedPhone.Data(Today)), 390);
        await page.Page.FillAsync("#model", "oo 1i7");
        Assert.Contains("O0-1L7", await page.Page.InnerTextAsync("#model-list"), StringComparison.Ordinal);
    }

    [BrowserFact]
    public async Task Open_OldData_WarnsAndFreshDataDoesNot()
    {
        await using OpenedPage old = await browser.OpenTextAsync(LookupPage.Render(InventedPhone.Data(Today.AddDays(-46))), 390);
        Assert.Contains("46 days old", await old.Page.InnerTextAsync("#stale"), StringComparison.Ordinal);
        await using OpenedPage fresh = await browser.OpenTextAsync(LookupPage.Render(InventedPhone.Data(Today.AddDays(-45))), 390);
        Assert.False(await fresh.Page.IsVisibleAsync("#stale"));
    }

    private async Task TypeAsync(int width, string model)
    {
        await using OpenedPage page = await browser.OpenTextAsync(LookupPage.Render(InventedPhone.Data(Today)), width);
        await page.Page.FillAsync("#model", model);
        await page.Page.PressAsync("#model", "Enter");
        await page.Page.FillAsync("#complaint", "no water");
        await page.Page.PressAsync("#complaint", "Enter");
        string answer = await page.Page.InnerTextAsync("#answer");
        await page.ShootAsync($"phone-{width}");
        Assert.Contains("PX-20011", answer, StringComparison.Ordinal);
        Assert.Contains("replaces PX-10007", answer, StringComparison.Ordinal);
        Assert.Contains("van 2 has 3", answer, StringComparison.Ordinal);
        Assert.Contains("</script>", answer, StringComparison.Ordinal);
        Assert.True(answer.IndexOf("Is the tap open?", StringComparison.Ordinal) < answer.IndexOf("Coil resistance", StringComparison.Ordinal));
        Assert.Contains("Disconnect power first.", answer, StringComparison.Ordinal);
        await page.AssertSoundAsync();
        int small = await page.Page.EvaluateAsync<int>("[...document.querySelectorAll('button, input, select')].filter(e => e.getClientRects().length && e.getBoundingClientRect().height < 44).length");
        Assert.Equal(0, small);
    }
}
