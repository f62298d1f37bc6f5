using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Commands;

/// <summary>The shop a command speaks of: the one named with <c>--input</c>, else the one whose files the last run in <c>--out</c> read.</summary>
internal static class ShopInUse
{
    private const string Sample = "data-sample";

    /// <summary>Its folder of files.</summary>
    /// <param name="given">What <c>--input</c> says, or null if it was not given.</param>
    /// <param name="output">Folder of the last run.</param>
    public static string Input(string? given, OutputFolder output) => given ?? LastRun(output.RunRecord) ?? Sample;

    /// <summary>Prints its name, so that nobody takes one shop's figures for another's. Nothing is printed for a shop without a name.</summary>
    public static void PrintName(TextWriter writer, OutputFormat format, ShopSettings shop)
    {
        if (format == OutputFormat.Table && shop.Shop != new ShopSettings().Shop)
        {
            writer.WriteLine($"Shop: {shop.Shop}");
            writer.WriteLine();
        }
    }

    private static string? LastRun(string record)
    {
        try
        {
            return File.Exists(record) && (string?)JsonNode.Parse(File.ReadAllText(record))?["input"] is { } input && Directory.Exists(input) ? input : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
