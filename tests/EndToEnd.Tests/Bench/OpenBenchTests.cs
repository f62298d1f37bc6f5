using Microsoft.AspNetCore.Builder;
using PartsSignal.Pipeline.Bench;

namespace PartsSignal.EndToEnd.Tests.Bench;

public sealed class OpenBenchTests : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private OpenBench Running => new(_folder.Sub("home"));

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Find_BenchRunning_GivesItsAddressUntilItEnds()
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        Assert.Null(await Running.FindAsync(cancellation));
        var token = new StartToken();
        using var work = new BenchWork(TimeProvider.System);
        await using WebApplication app = BenchServer.Build(0, token, new KnownShops(_folder.Sub("home")), work, TimeProvider.System);
        await app.StartAsync(cancellation);
        string start = $"{app.Urls.First()}{BenchGuard.StartPath}?token=";
        Running.Keep(start + token.Text);
        Assert.Equal(start + token.Text, await Running.FindAsync(cancellation));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(_folder.Sub("home/running.txt")));
        }

        // Another bench has the port: its secret is a different one.
        Running.Keep(start + new StartToken().Text);
        Assert.Null(await Running.FindAsync(cancellation));

        // The bench was killed and its file stayed.
        Running.Keep(start + token.Text);
        await app.StopAsync(cancellation);
        Assert.Null(await Running.FindAsync(cancellation));
        Running.Remove();
        Assert.False(File.Exists(_folder.Sub("home/running.txt")));
    }

    [Theory]
    [InlineData("not an address")]
    [InlineData("http://198.51.100.7/start?token=1")]
    [InlineData("")]
    public async Task Find_FileOfSomethingElse_Null(string text)
    {
        _folder.Write("home/running.txt", text);
        Assert.Null(await Running.FindAsync(TestContext.Current.CancellationToken));
    }
}
