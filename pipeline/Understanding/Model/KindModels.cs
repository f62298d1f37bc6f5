using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding.Model;

/// <summary>Weights of the evidence for kinds.</summary>
/// <param name="Kinds">By name of the kind, <c>none</c> too.</param>
internal sealed record KindModels(IReadOnlyDictionary<string, TreeModel> Kinds)
{
    /// <summary>A table that gives nothing of a shop's history.</summary>
    public const string None = "none";

    private const double Thousandths = 1000;

    /// <summary>All kinds, none last.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. SourceFields.Kinds, None];

    /// <summary>Chance of each of <see cref="Names"/>; they add up to 1.</summary>
    public double[] Chances(byte[] levels)
    {
        double[] odds = [.. Names.Select(k => Math.Exp(Math.Min(Kinds[k].Score(levels) / Thousandths, 12)))];
        double sum = odds.Sum();
        return [.. odds.Select(o => o / sum)];
    }
}
