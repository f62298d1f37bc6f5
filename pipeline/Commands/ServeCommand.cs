using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Serving;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>serve</c>.</summary>
internal sealed class ServeSettings : CommandSettings
{
    [CommandOption("--port <N>")]
    [Description("Port to listen on")]
    [DefaultValue(8710)]
    public int Port { get; init; } = 8710;

    [CommandOption("--listen <ADDRESS>")]
    [Description("Address to listen on; one that others can reach needs --token")]
    [DefaultValue("127.0.0.1")]
    public string Listen { get; init; } = "127.0.0.1";

    [CommandOption("--token <SECRET>")]
    [Description("Password for every request, 16 characters or more. Other users of this computer can see it; PARTSSIGNAL_TOKEN or --token-file hide it")]
    public string? Token { get; init; }

    [CommandOption("--token-file <FILE>")]
    [Description("File whose first line is the password")]
    public string? TokenFile { get; init; }

    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json; default: that of the last run")]
    public string? Input { get; init; }

    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the last run")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}

/// <summary>Serves the last run's reports and answers until it is stopped.</summary>
internal sealed class ServeCommand(ProgramIo io) : AsyncCommand<ServeSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, ServeSettings settings, CancellationToken cancellationToken)
    {
        ServeOptions options = ServeOptions.Read(settings.Listen, settings.Port, TokenOf(settings));
        var output = new OutputFolder(settings.Out);
        string input = ShopInUse.Input(settings.Input, output);
        var shop = new ReloadingShop(output, () => ServedShop.Read(output, input));
        await using WebApplication app = ShopServer.Build(options, shop, io.Clock);
        await app.StartAsync(cancellationToken).ConfigureAwait(false);
        await io.Out.WriteLineAsync($"Listening on {string.Join(", ", app.Urls)}. Press Ctrl+C to stop.").ConfigureAwait(false);
        await app.WaitForShutdownAsync(cancellationToken).ConfigureAwait(false);
        return ExitCode.Done;
    }

    private static string? TokenOf(ServeSettings settings)
    {
        if (settings.TokenFile is not { } file)
        {
            return settings.Token ?? (Environment.GetEnvironmentVariable("PARTSSIGNAL_TOKEN") is { Length: > 0 } hidden ? hidden : null);
        }

        return settings.Token is not null ? throw new BadInputException("--token and --token-file: give one of them.")
            : !File.Exists(file) ? throw new BadInputException($"--token-file {file}: there is no such file.")
            : File.ReadLines(file).FirstOrDefault()?.Trim() ?? "";
    }
}
