namespace PartsSignal.Reports.Tests.Charts;

public sealed class ChartGalleryBrowserTests(BrowserHost browser) : IClassFixture<BrowserHost>
{
    [BrowserFact]
    public Task Open_Desktop_IsSound() => OpenAsync(1280);

    [BrowserFact]
    public Task Open_Phone_IsSound() => OpenAsync(390);

    private async Task OpenAsync(int width)
    {
        await using OpenedPage page = await browser.OpenTextAsync(ChartGallery.PageText(), width);
        await page.ShootAsync($"gallery-{width}");
        await page.AssertSoundAsync();
    }
}
