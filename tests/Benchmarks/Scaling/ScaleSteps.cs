using System.Globalization;
using System.Text.RegularExpressions;
using PartsSignal.Benchmarks.Loading;

namespace PartsSignal.Benchmarks.Scaling;

/// <summary>What one step took at one size.</summary>
/// <param name="Seconds">Wall time of the step, without the start of its process.</param>
/// <param name="AllocatedMegabytes">Managed memory it asked for; null: not told.</param>
/// <param name="PeakMegabytes">Most memory its process held.</param>
internal sealed record StepCost(double Seconds, long? AllocatedMegabytes, long PeakMegabytes);

/// <summary>The steps that are measured, in the order they need each other.</summary>
internal static partial class ScaleSteps
{
    /// <summary>Staging alone.</summary>
    public const string Ingest = "ingest";

    /// <summary>The engine's own copy, types detected from a sample of the rows as it does by default.</summary>
    public const string TypedCopy = "copy-typed";

    /// <summary>The same, each cell a text.</summary>
    public const string TextCopy = "copy-text";

    private static readonly string[] Loading = ["combine", "publish"];

    // What each asks the program itself; the others run one step of it (see StepProgram).
    private static readonly Dictionary<string, string[]> Commands = new(StringComparer.Ordinal)
    {
        ["run"] = ["run"],
        ["lookup"] = ["lookup", "--type", "washer", "--complaint", "does not fill"],
        ["report"] = ["report"],
    };

    /// <summary>Names, as in <c>--only</c>.</summary>
    public static readonly IReadOnlyList<string> Names =
    [
        Ingest, TypedCopy, TextCopy, .. Loading,
        "rates", "rates-sql", "age-curves", "trends", "training", "van-plan", "run", "lookup", "report",
    ];

    /// <summary>Measures the steps wanted over one shop, each in a process of its own; transform and publishing share one.</summary>
    public static IEnumerable<(string Step, StepCost Cost)> Measure(string shop, string output, Func<string, bool> wants)
    {
        foreach (string step in Names.Where(n => wants(n) && !Loading.Contains(n) && Array.IndexOf([Ingest, TypedCopy, TextCopy], n) >= 0))
        {
            yield return (step, Child(step, shop, output));
        }

        if (Loading.Any(wants))
        {
            var load = ChildProgram.Run("load", "--steps", "--input", shop, "--out", output);
            foreach (string phase in Loading.Where(wants))
            {
                yield return (phase, Phase(load.Steps, phase));
            }
        }

        foreach (string step in Names.Skip(3 + Loading.Length).Where(wants))
        {
            yield return (step, Commands.TryGetValue(step, out string[]? command) ? Whole(command, shop, output) : Child(step, shop, output));
        }
    }

    private static StepCost Whole(string[] command, string shop, string output)
    {
        var program = ChildProgram.Run([.. command, "--input", shop, "--out", output]);
        return new StepCost(program.Seconds, null, program.PeakMegabytes);
    }

    private static StepCost Child(string step, string shop, string output)
    {
        var child = ChildProgram.RunSelf("step", step, shop, output);
        string[] cells = child.Output.Trim().Split('\n')[^1].Split(' ');
        return new StepCost(
            double.Parse(cells[0], CultureInfo.InvariantCulture), long.Parse(cells[1], CultureInfo.InvariantCulture), child.PeakMegabytes);
    }

    private static StepCost Phase(string steps, string phase)
    {
        Match line = PhaseLine().Matches(steps).Single(m => m.Groups["name"].Value == phase);
        return new StepCost(Of("seconds"), (long)Of("allocated"), (long)Of("peak"));
        double Of(string group) => double.Parse(line.Groups[group].Value, NumberStyles.Number, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^(?<name>\w+) +(?<seconds>[\d.]+) s +(?<allocated>[\d,]+) MB allocated +(?<peak>[\d,]+) MB", RegexOptions.Multiline)]
    private static partial Regex PhaseLine();
}
