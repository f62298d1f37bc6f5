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
    [Description("Port to listen on; 0 picks a free one")]
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

        var token = new StartToken();
        using var work = new BenchWork(io.Clock);
        await using WebApplication app = BenchServer.Build(settings.Port, token, new KnownShops(settings.Home ?? KnownShops.DefaultHome), work, io.Clock);
        await app.StartAsync(cancellationToken).ConfigureAwait(false);
        string address = $"{app.Urls.First()}{BenchGuard.StartPath}?token={token.Text}";
        await io.Out.WriteLineAsync($"Open {address}").ConfigureAwait(false);
        await io.Out.WriteLineAsync("Keep this window open while you work. Press Ctrl+C to stop.").ConfigureAwait(false);
        if (!settings.NoBrowser)
        {
            OpenBrowser(address);
        }

        await app.WaitForShutdownAsync(cancellationToken).ConfigureAwait(false);
        work.Stop();
        await work.WhenIdleAsync().ConfigureAwait(false);
        return ExitCode.Done;
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
