using System.ComponentModel;
using System.Diagnostics;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>bench</c>.</summary>
internal sealed class BenchSettings : CommandSettings
{
    [CommandOption("--port <N>")]
    [Description("Port to listen on; a free one is used when it is taken, or for 0")]
    [DefaultValue(8720)]
    public int Port { get; init; } = 8720;

    [CommandOption("--home <FOLDER>")]
    [Description("Folder that keeps the shops; if not given, one in your local application data")]
    public string? Home { get; init; }

    [CommandOption("--no-browser")]
    [Description("Print the address and open no browser")]
    public bool NoBrowser { get; init; }
}

/// <summary>Opens the pages on which an owner does everything, in this computer's browser.</summary>
internal sealed class BenchCommand(ProgramIo io) : AsyncCommand<BenchSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, BenchSettings settings, CancellationToken cancellationToken)
    {
        if (settings.Port is < 0 or > 65535)
        {
            throw new BadInputException($"--port {settings.Port.ToString(System.Globalization.CultureInfo.InvariantCulture)}: must be from 0 to 65535.");
        }

        string home = settings.Home ?? KnownShops.DefaultHome;
        var running = new OpenBench(home);
        if (await running.FindAsync(cancellationToken).ConfigureAwait(false) is { } open)
        {
            await io.Out.WriteLineAsync($"PartsSignal is already open. Open {open}").ConfigureAwait(false);
            Show(open, settings);
            return ExitCode.Done;
        }

        var token = new StartToken();
        var shops = new KnownShops(home);
        foreach (ShopFolder shop in shops.All)
        {
            await new UpdateRollback(shop).RecoverAsync(io.Clock).ConfigureAwait(false);
        }

        using var work = new BenchWork(io.Clock);
        await using WebApplication app = await StartAsync(settings.Port, token, shops, work, cancellationToken).ConfigureAwait(false);
        string address = $"{app.Urls.First()}{BenchGuard.StartPath}?token={token.Text}";
        running.Keep(address);
        await io.Out.WriteLineAsync($"Open {address}").ConfigureAwait(false);
        await io.Out.WriteLineAsync("Keep this window open while you work. Press Ctrl+C to stop.").ConfigureAwait(false);
        Show(address, settings);
        await app.WaitForShutdownAsync(cancellationToken).ConfigureAwait(false);
        running.Remove();
        work.Stop(closes: true);
        await work.WhenIdleAsync().ConfigureAwait(false);
        return ExitCode.Done;
    }

    // Another program may have the port: any free one will do, since nobody types the address.
    private async Task<WebApplication> StartAsync(int port, StartToken token, KnownShops shops, BenchWork work, CancellationToken cancellation)
    {
        WebApplication app = BenchServer.Build(port, token, shops, work, io.Clock);
        try
        {
            await app.StartAsync(cancellation).ConfigureAwait(false);
            return app;
        }
        catch (IOException) when (port != 0)
        {
            await app.DisposeAsync().ConfigureAwait(false);
            return await StartAsync(0, token, shops, work, cancellation).ConfigureAwait(false);
        }
        catch
        {
            await app.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    private static void Show(string address, BenchSettings settings)
    {
        if (!settings.NoBrowser)
        {
            OpenBrowser(address);
        }
    }

    // The printed address does as well where no browser can be opened.
    private static void OpenBrowser(string address)
    {
        try
        {
            using Process? browser = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true });
        }
        catch (Exception none) when (none is Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
        }
    }
}
