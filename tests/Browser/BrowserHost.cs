using Microsoft.Playwright;

namespace PartsSignal.Tests;

/// <summary>One headless browser for a test class, with no network of its own.</summary>
public sealed class BrowserHost : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Path of the browser; null: there is none.</summary>
    public static string? Executable { get; } = new[] { Environment.GetEnvironmentVariable("PARTSSIGNAL_BROWSER"), "/usr/bin/chromium", "/usr/bin/chromium-browser" }
        .FirstOrDefault(p => !string.IsNullOrEmpty(p) && File.Exists(p));

    public async ValueTask InitializeAsync()
    {
        if (Executable is null)
        {
            return;
        }

        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Executable,
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    /// <summary>Opens an address and watches what it does.</summary>
    internal async Task<OpenedPage> OpenAsync(string address, int width, bool script = true)
    {
        IBrowser browser = _browser ?? throw new InvalidOperationException("No browser: install chromium, or name one in PARTSSIGNAL_BROWSER.");
        IBrowserContext context = await browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 800 }, BypassCSP = false, JavaScriptEnabled = script });
        IPage page = await context.NewPageAsync();
        var opened = new OpenedPage(context, page, address);
        await page.GotoAsync(address);
        return opened;
    }

    /// <summary>Writes a document to a file of its own and opens that from disk.</summary>
    internal Task<OpenedPage> OpenTextAsync(string html, int width)
    {
        string file = Path.Combine(Directory.CreateTempSubdirectory("partssignal-page").FullName, "index.html");
        File.WriteAllText(file, html);
        return OpenAsync(new Uri(file).AbsoluteUri, width);
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}
