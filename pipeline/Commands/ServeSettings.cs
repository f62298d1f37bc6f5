using System.ComponentModel;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>serve</c>.</summary>
internal sealed class ServeSettings : CommandSettings
{
    /// <summary>Port.</summary>
    [CommandOption("--port <N>")]
    [Description("Port to listen on")]
    [DefaultValue(8710)]
    public int Port { get; init; } = 8710;

    /// <summary>Address.</summary>
    [CommandOption("--listen <ADDRESS>")]
    [Description("Address to listen on; any but this machine's own needs --token")]
    [DefaultValue("127.0.0.1")]
    public string Listen { get; init; } = "127.0.0.1";

    /// <summary>Token.</summary>
    [CommandOption("--token <SECRET>")]
    [Description("Secret every question must carry, 16 characters or more")]
    public string? Token { get; init; }

    /// <summary>Folder with the shop's files.</summary>
    [CommandOption("--input <FOLDER>")]
    [Description("Folder with the shop's files and its shop.json")]
    [DefaultValue("data-sample")]
    public string Input { get; init; } = "data-sample";

    /// <summary>Folder of a run.</summary>
    [CommandOption("--out <FOLDER>")]
    [Description("Folder of the last run")]
    [DefaultValue("out")]
    public string Out { get; init; } = "out";
}
