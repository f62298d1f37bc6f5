using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class MonthlyPageBrowserTests(BrowserHost browser) : IClassFixture<BrowserHost>
{
    [BrowserFact]
    public Task Open_FullMonthOnDesktop_IsSound() => OpenAsync("month-full", SampleMonth.Full(), 1280);

    [BrowserFact]
    public Task Open_FullMonthOnPhone_IsSound() => OpenAsync("month-full", SampleMonth.Full(), 390);

    [BrowserFact]
    public Task Open_EmptyMonthOnPhone_IsSound() => OpenAsync("month-empty", SampleMonth.Bare(MonthFacts.None(new DateOnly(2024, 5, 1))), 390);

    [BrowserFact]
    public Task Open_MonthOfOneJobOnDesktop_IsSound() => OpenAsync("month-one", SampleMonth.Bare(SampleMonth.OneJob()), 1280);

    private async Task OpenAsync(string name, MonthlyFacts facts, int width)
    {
        await using OpenedPage page = await browser.OpenTextAsync(MonthlyPage.Render(facts.Report()), width);
        await page.ShootAsync($"{name}-{width}");
        await page.AssertSoundAsync();
        if (width == 1280)
        {
            byte[] pdf = await page.PrintAsync("A4", name);
            Assert.Equal("%PDF"u8, pdf.AsSpan(0, 4));
        }
    }
}
