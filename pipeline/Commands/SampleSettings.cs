using System.ComponentModel;
using PartsSignal.SampleShop;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Options of <c>sample</c>.</summary>
internal sealed class SampleSettings : CommandSettings
{
    /// <summary>About how many jobs.</summary>
    [CommandOption("--jobs <N>")]
    [Description("About how many jobs the log should hold, 200 or more.")]
    [DefaultValue(SampleShopOptions.CommittedJobs)]
    public int Jobs { get; init; }

    /// <summary>Seed.</summary>
    [CommandOption("--seed <S>")]
    [Description("Seed of everything random: the same seed gives the same bytes.")]
    [DefaultValue(SampleShopOptions.CommittedSeed)]
    public long Seed { get; init; }

    /// <summary>Seed of a random office dialect; null writes the sample shop's own files.</summary>
    [CommandOption("--dialect <SEED>")]
    [Description("Write a small shop in a random office dialect (headers, languages, layouts) with truth.json: the same seed gives the same bytes.")]
    public long? Dialect { get; init; }

    /// <summary>Folder to write to.</summary>
    [CommandOption("--output <DIR>")]
    [Description("Folder to write to; must be new or empty.")]
    public string? Output { get; init; }
}
