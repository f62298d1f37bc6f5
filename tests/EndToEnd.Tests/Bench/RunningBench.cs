using Microsoft.AspNetCore.Builder;
using PartsSignal.Pipeline.Bench;

namespace PartsSignal.EndToEnd.Tests.Bench;

/// <summary>A bench over an empty home folder, on a free port of this machine.</summary>
internal sealed class RunningBench : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ScratchFolder _home;

    private RunningBench(WebApplication app, ScratchFolder home, StartToken token, KnownShops shops, BenchWork work) =>
        (_app, _home, Token, Shops, Work) = (app, home, token, shops, work);

    public StartToken Token { get; }

    public KnownShops Shops { get; }

    public BenchWork Work { get; }

    public string Address => _app.Urls.First();

    public string StartAddress => $"{Address}/start?token={Token.Text}";

    /// <summary>Starts one.</summary>
    /// <param name="clock">What the pages take for today, or null for the true time.</param>
    public static async Task<RunningBench> StartAsync(TimeProvider? clock = null)
    {
        var home = new ScratchFolder();
        var token = new StartToken();
        var shops = new KnownShops(home.Sub("home"));
        var work = new BenchWork(TimeProvider.System);
        WebApplication app = BenchServer.Build(0, token, shops, work, clock ?? TimeProvider.System);
        await app.StartAsync();
        return new RunningBench(app, home, token, shops, work);
    }

    /// <summary>A browser without pictures: follows no redirect by itself and keeps cookies.</summary>
    public HttpClient Client() => new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(Address) };

    /// <summary>A client that came in by the start address.</summary>
    public async Task<HttpClient> ClientWithCookieAsync()
    {
        HttpClient client = Client();
        await client.GetAsync("/start?token=" + Token.Text);
        return client;
    }

    public async ValueTask DisposeAsync()
    {
        Work.Stop();
        await Work.WhenIdleAsync();
        await _app.DisposeAsync();
        Work.Dispose();
        _home.Dispose();
    }
}
