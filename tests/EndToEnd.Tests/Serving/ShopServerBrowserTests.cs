namespace PartsSignal.EndToEnd.Tests.Serving;

public sealed class ShopServerBrowserTests(BrowserHost browser) : IClassFixture<BrowserHost>
{
    [BrowserFact]
    public Task Ask_OnPhone_IsSound() => AskAsync(390);

    [BrowserFact]
    public Task Ask_OnDesktop_IsSound() => AskAsync(1280);

    private async Task AskAsync(int width)
    {
        await using RunningServer server = await RunningServer.StartAsync();
        await using OpenedPage page = await browser.OpenAsync(server.Address + "/", width);
        await page.Page.FillAsync("#model", "K41");
        await page.Page.FillAsync("#complaint", "wont fill");
        await page.Page.PressAsync("#complaint", "Enter");
        await page.Page.WaitForURLAsync("**/answer?*");
        await page.ShootAsync($"serve-{width}");
        Assert.Contains("Answer", await page.Page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.AssertSoundAsync();
        await page.Page.GotoAsync(server.Address + "/lookup.html");
        await page.Page.FillAsync("#model", "K41");
        Assert.Contains("K41", await page.Page.InnerTextAsync("#model-list"), StringComparison.Ordinal);
        await page.AssertSoundAsync();
    }
}
