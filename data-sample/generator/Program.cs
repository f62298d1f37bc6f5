using System.Text.Json;
using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.SampleShop;

/// <summary>The generator as a command of its own: scores a run over a fictional shop against the truth behind it.</summary>
internal static class Program
{
    private const string Usage = "usage: score --out FOLDER [--input FOLDER]\n  --out    folder of a run over a fictional shop\n  --input  folder of the shop's files, with truth/ in it (default: the one the run read)";

    private static int Main(string[] args)
    {
        if (args is not ["score", .. var rest] || Options(rest) is not { } options || !options.TryGetValue("--out", out string? output))
        {
            Console.Error.WriteLine(Usage);
            return 2;
        }

        try
        {
            Console.Out.WriteLine(RunScore.Compute(output, options.GetValueOrDefault("--input")).ToJsonString(new JsonSerializerOptions { WriteIndented = true }));
            return 0;
        }
        catch (InvalidDataException fault)
        {
            Console.Error.WriteLine(fault.Message);
            return 2;
        }
    }

    /// <summary>Options by name, or null if one is not known or has no value.</summary>
    private static Dictionary<string, string>? Options(string[] args) =>
        args.Length % 2 == 0 && args.Chunk(2).All(pair => pair[0] is "--out" or "--input")
            ? args.Chunk(2).GroupBy(pair => pair[0]).ToDictionary(g => g.Key, g => g.Last()[1], StringComparer.Ordinal)
            : null;
}
