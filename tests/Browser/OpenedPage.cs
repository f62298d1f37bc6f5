using System.Text.Json;
using Microsoft.Playwright;

namespace PartsSignal.Tests;

/// <summary>A page in the browser and all it said and asked for.</summary>
internal sealed class OpenedPage : IAsyncDisposable
{
    private const int MostWaits = 600;
    private const int WaitMilliseconds = 50;
    private readonly IBrowserContext _context;
    private readonly List<string> _errors = [];
    private readonly List<string> _outside = [];

    public OpenedPage(IBrowserContext context, IPage page, string address)
    {
        (_context, Page) = (context, page);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                _errors.Add(message.Text);
            }
        };
        page.PageError += (_, error) => _errors.Add(error);
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith("data:", StringComparison.Ordinal) && new Uri(request.Url).Authority != new Uri(address).Authority)
            {
                _outside.Add(request.Url);
            }
        };
    }

    public IPage Page { get; }

    /// <summary>Fails unless the page was quiet, stayed at home, is no wider than the screen and has no serious accessibility fault.</summary>
    public async Task AssertSoundAsync()
    {
        Assert.Empty(_errors);
        Assert.Empty(_outside);
        await AssertFitsAsync();
        Assert.Equal("", await Page.EvaluateAsync<string>("typeof window.ran === 'undefined' ? '' : 'markup of the data ran'"));
        Assert.Empty(await AxeFaultsAsync());
    }

    /// <summary>Asserts that nothing is wider than the page. Works without script too.</summary>
    public async Task AssertFitsAsync()
    {
        await LoadedAsync();
        int excess = await Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(excess <= 0, $"the page scrolls sideways by {excess} px");
    }

    /// <summary>Waits until the page is complete: still without its style sheet it is wider than the one people see. Asks the page itself, since an event may have come before anybody waits for it.</summary>
    public async Task LoadedAsync()
    {
        for (int waits = 0; await Page.EvaluateAsync<string>("document.readyState") != "complete"; waits++)
        {
            Assert.True(waits < MostWaits, "the page does not finish loading");
            await Task.Delay(WaitMilliseconds);
        }
    }

    /// <summary>Saves a picture when PARTSSIGNAL_SHOTS names a folder.</summary>
    public async Task ShootAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_SHOTS") is { Length: > 0 } folder)
        {
            await Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        }
    }

    /// <summary>Prints to PDF; the bytes. Saved too when PARTSSIGNAL_SHOTS names a folder.</summary>
    public async Task<byte[]> PrintAsync(string paper, string name)
    {
        byte[] pdf = await Page.PdfAsync(new PagePdfOptions { Format = paper });
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_SHOTS") is { Length: > 0 } folder)
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, $"{name}-{paper}.pdf"), pdf);
        }

        return pdf;
    }

    private async Task<string[]> AxeFaultsAsync()
    {
        string script = AxeScript.Text ?? throw new InvalidOperationException("No accessibility checker: run 'npm install' in tests/Browser.");

        // Evaluated, not inserted: the page's own policy forbids any script but its own.
        await Page.EvaluateAsync(script);
        JsonElement result = await Page.EvaluateAsync<JsonElement>("axe.run(document, { resultTypes: ['violations'] })");
        return [.. result.GetProperty("violations").EnumerateArray()
            .Where(v => v.GetProperty("impact").GetString() is "serious" or "critical")
            .Select(v => $"{v.GetProperty("id").GetString()}: {v.GetProperty("help").GetString()} {v.GetProperty("nodes")[0].GetProperty("html").GetString()}")];
    }

    public async ValueTask DisposeAsync() => await _context.DisposeAsync();
}
