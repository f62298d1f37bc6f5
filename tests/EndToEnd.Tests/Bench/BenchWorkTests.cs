using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;
using PartsSignal.EndToEnd.Tests.Crashes;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.EndToEnd.Tests.Bench;

/// <summary>One update at a time, whoever asks, and nothing lost when it is cut off.</summary>
public sealed partial class BenchWorkTests
{
    private const string Log = "Job number,Call date,Finished,Make,Model number,Customer says,Part 1\nJ1,2026-08-03,2026-08-04,Orvane,WE100,does not heat,P100\nJ2,2026-08-04,2026-08-05,Orvane,WE100,leaks,P200\n";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Start_WhileTheCommandLineWrites_WaitsThenSaysSoAndChangesNothing()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "jobs.csv"), Log, Stop);
        using var work = new BenchWork(new HastyClock());
        using (await StoreLock.TakeAsync(shop.Output.Root, TimeSpan.Zero, TimeProvider.System, Stop))
        {
            Assert.True(work.Start(shop));
            await work.WhenIdleAsync();
        }

        Assert.Equal(WorkOutcome.Failed, work.Now.Outcome);
        Assert.Equal([BenchWork.Busy], work.Now.Messages);
        Assert.False(Directory.Exists(shop.Output.Store));
    }

    [Fact]
    public async Task Update_TwoBrowsers_BothSeeItAndEitherCanStopIt()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "jobs.csv"), Log, Stop);
        using HttpClient first = await bench.ClientWithCookieAsync(), second = await bench.ClientWithCookieAsync();
        using (await StoreLock.TakeAsync(shop.Output.Root, TimeSpan.Zero, TimeProvider.System, Stop))
        {
            // The lock keeps the update waiting, so that both can look at it.
            await PostAsync(first, "/run/start");
            Assert.Contains("being updated", await second.GetStringAsync("/files", Stop), StringComparison.Ordinal);
            await PostAsync(second, "/run/start");
            Assert.Contains("data-progress", await second.GetStringAsync("/run", Stop), StringComparison.Ordinal);
            await PostAsync(second, "/run/stop");
            await bench.Work.WhenIdleAsync();
        }

        Assert.Contains("Stopped. Nothing was changed.", await first.GetStringAsync("/run", Stop), StringComparison.Ordinal);
        Assert.False(Directory.Exists(shop.Output.Store));
    }

    [Fact]
    public async Task Update_ProgramKilledInTheMiddle_StartsAgainWithEverythingAndEnds()
    {
        using var home = new ScratchFolder();
        ShopFolder shop = new KnownShops(home.Path).Add("Millrace");
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "jobs.csv"), Log, Stop);
        (Process killed, HttpClient client) = await StartAsync(home.Path);
        await PostAsync(client, "/run/start");
        killed.Kill();
        await killed.WaitForExitAsync(Stop);
        killed.Dispose();
        client.Dispose();

        (Process program, HttpClient again) = await StartAsync(home.Path);
        try
        {
            Assert.Contains("jobs.csv", await again.GetStringAsync("/files", Stop), StringComparison.Ordinal);
            Assert.Contains("The last update was cut off when the program ended.", await again.GetStringAsync("/results", Stop), StringComparison.Ordinal);
            await PostAsync(again, "/run/start");
            using var watch = new HttpRequestMessage(HttpMethod.Get, "/run/progress");
            Assert.Contains("\"running\":false", await (await again.SendAsync(watch, Stop)).Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
            string done = await again.GetStringAsync("/run", Stop);
            Assert.Contains("See the results", done, StringComparison.Ordinal);
            Assert.DoesNotContain("was cut off", done, StringComparison.Ordinal);
            Assert.Contains("jobs.csv", await again.GetStringAsync("/rows", Stop), StringComparison.Ordinal);
        }
        finally
        {
            program.Kill();
            await program.WaitForExitAsync(Stop);
            program.Dispose();
            again.Dispose();
        }
    }

    // The program in a process of its own, and a client that came in by the address it printed.
    private static async Task<(Process Program, HttpClient Client)> StartAsync(string home)
    {
        var start = new ProcessStartInfo("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "partssignal.dll"), "bench", "--no-browser", "--port", "0", "--home", home]) { RedirectStandardOutput = true };
        ProgramProcess.CompileFaster(start);
        Process program = Process.Start(start)!;
        string line = await program.StandardOutput.ReadLineAsync(Stop) ?? "";
        var address = new Uri(line["Open ".Length..]);
        var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(address.GetLeftPart(UriPartial.Authority)), Timeout = Patience };
        await client.GetAsync(address.PathAndQuery, Stop);
        return (program, client);
    }

    private static async Task PostAsync(HttpClient client, string address)
    {
        string token = FormToken().Match(await client.GetStringAsync("/shops", Stop)).Groups[1].Value;
        using HttpResponseMessage answer = await client.PostAsync(address, new FormUrlEncodedContent([new("__RequestVerificationToken", token)]), Stop);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex FormToken();

    // A minute passes in half a second.
    private sealed class HastyClock : TimeProvider
    {
        public override long GetTimestamp() => base.GetTimestamp() * 120;
    }
}
