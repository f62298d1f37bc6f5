using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Serving;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Serves the last run's reports and answers until it is stopped.</summary>
internal sealed class ServeCommand(ProgramIo io) : AsyncCommand<ServeSettings>
{
    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, ServeSettings settings, CancellationToken cancellationToken)
    {
        ServeOptions options = ServeOptions.Read(settings.Listen, settings.Port, settings.Token);
        var output = new OutputFolder(settings.Out);
        var shop = new ReloadingShop(output, () => ServedShop.Read(output, settings.Input));
        await using WebApplication app = ShopServer.Build(options, shop, io.Clock);
        await app.StartAsync(cancellationToken).ConfigureAwait(false);
        await io.Out.WriteLineAsync($"Listening on {string.Join(", ", app.Urls)}; stop with Ctrl+C.").ConfigureAwait(false);
        await app.WaitForShutdownAsync(cancellationToken).ConfigureAwait(false);
        return ExitCode.Done;
    }
}
