using System.Net;
using Microsoft.AspNetCore.Builder;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Statistics;
using PartsSignal.EndToEnd.Tests.PhonePage;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Serving;
using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Monthly;
using PartsSignal.Reports.Phone;

namespace PartsSignal.EndToEnd.Tests.Serving;

/// <summary>A server over an invented shop, on a free port of this machine.</summary>
internal sealed class RunningServer : IAsyncDisposable
{
    private readonly WebApplication _app;

    private RunningServer(WebApplication app, string folder) => (_app, Folder, Client) = (app, folder, new HttpClient { BaseAddress = new Uri(app.Urls.First()) });

    public HttpClient Client { get; }

    public string Folder { get; }

    public string Address => _app.Urls.First();

    public static async Task<RunningServer> StartAsync(string? token = null)
    {
        string folder = Directory.CreateTempSubdirectory("partssignal-serve").FullName;
        var output = new OutputFolder(folder);
        var day = new DateOnly(2024, 5, 31);
        Directory.CreateDirectory(Path.Combine(output.Reports, "2024-05"));
        await File.WriteAllTextAsync(output.LookupPage, LookupPage.Render(InventedPhone.Data(day)));
        await File.WriteAllTextAsync(Path.Combine(output.Reports, "index.html"), MonthIndex.Render("Millrace", day, [new IndexedMonth(new DateOnly(2024, 5, 1), 3, Estimate.None("not known")) { Written = true }]));
        await File.WriteAllTextAsync(Path.Combine(output.Reports, "2024-05", "summary.txt"), "May");
        await File.WriteAllTextAsync(Path.Combine(folder, "identity.key"), "secret");
        var facts = new LookupFacts(
            [], [], [], [], [new KnownModel("K41-220/B", "K41", "washer", InventedPhone.Evil)], CheckTable.Empty,
            [new YearRisk("units_seen", "washer", "all", "drain_pump", 7, 0.3, 40)]);
        var shop = new ServedShop(output, Answers(new ShopSettings { Shop = InventedPhone.Evil }, InventedPhone.Model, facts), day);
        WebApplication app = ShopServer.Build(new ServeOptions(IPAddress.Loopback, 0, token), new ReloadingShop(output, () => shop), TimeProvider.System);
        await app.StartAsync();
        return new RunningServer(app, folder);
    }

    public static ShopAnswers Answers(ShopSettings settings, ShippedModel model, LookupFacts facts) =>
        new(settings, model, facts, new CallReader(facts, WordSets.Load(null).Complaints, () => SerialCodes.None, (_, _, _) => null));

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _app.StopAsync();
        await _app.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}

/// <summary>A server for all tests of a class that change nothing and ask seldom.</summary>
public sealed class SharedServer : IAsyncLifetime
{
    private RunningServer _server = null!;

    public HttpClient Client => _server.Client;

    public async ValueTask InitializeAsync() => _server = await RunningServer.StartAsync();

    public ValueTask DisposeAsync() => _server.DisposeAsync();
}
