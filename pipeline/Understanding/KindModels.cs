using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Weights of the evidence for kinds.</summary>
/// <param name="Common">What holds for every kind.</param>
/// <param name="Kinds">What is added for one, by its name; <c>none</c> too.</param>
internal sealed record KindModels(TreeModel Common, IReadOnlyDictionary<string, TreeModel> Kinds)
{
    /// <summary>A table that gives nothing of a shop's history.</summary>
    public const string None = "none";

    private const double Thousandths = 1000;

    /// <summary>All kinds, none last.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. FieldCatalog.Kinds, None];

    /// <summary>Chance of each of <see cref="Names"/>; they add up to 1.</summary>
    /// <param name="levels">Levels of each.</param>
    public double[] Chances(IReadOnlyList<byte[]> levels)
    {
        double[] odds = [.. Names.Select((k, i) => Math.Exp(Math.Clamp((Common.Score(levels[i]) + Kinds[k].Score(levels[i])) / Thousandths, -12, 12)))];
        double sum = odds.Sum();
        return [.. odds.Select(o => o / sum)];
    }
}
