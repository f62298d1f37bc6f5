using System.Globalization;

namespace PartsSignal.Benchmarks.Scaling;

/// <summary>What <c>scale</c> is asked for.</summary>
/// <param name="Sizes">Jobs, ascending.</param>
/// <param name="Only">Steps to measure; empty: all.</param>
/// <param name="Keep">Folder for shops and outputs, used again when they are there; null: a folder of its own, deleted at the end.</param>
/// <param name="Years">Years the jobs are spread over.</param>
/// <param name="Packed">Whether the logs are packed.</param>
internal sealed record ScaleOptions(IReadOnlyList<long> Sizes, IReadOnlyList<string> Only, string? Keep, int Years, bool Packed)
{
    /// <summary>Reads <c>[SIZE ...] [--only STEP[,STEP]] [--keep FOLDER] [--years N] [--gzip]</c>.</summary>
    /// <exception cref="ArgumentException">An option is unknown, or a step.</exception>
    public static ScaleOptions Parse(IReadOnlyList<string> args)
    {
        var sizes = new List<long>();
        var options = new ScaleOptions([20_000, 1_000_000, 10_000_000], [], null, 6, false);
        for (int i = 0; i < args.Count; i++)
        {
            options = args[i] switch
            {
                "--only" => options with { Only = args[++i].Split(',') },
                "--keep" => options with { Keep = args[++i] },
                "--years" => options with { Years = int.Parse(args[++i], CultureInfo.InvariantCulture) },
                "--gzip" => options with { Packed = true },
                _ => options,
            };
            if (long.TryParse(args[i], NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out long size) && args[Math.Max(0, i - 1)] != "--years")
            {
                sizes.Add(size);
            }
        }

        string[] unknown = [.. options.Only.Where(o => !ScaleSteps.Names.Contains(o))];
        return unknown.Length > 0
            ? throw new ArgumentException($"No step '{string.Join(", ", unknown)}'. There are: {string.Join(", ", ScaleSteps.Names)}.")
            : options with { Sizes = [.. (sizes.Count > 0 ? sizes : options.Sizes).Order()] };
    }

    /// <summary>True when a step is to be measured.</summary>
    public bool Wants(string step) => Only.Count == 0 || Only.Contains(step);
}
