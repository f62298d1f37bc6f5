namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Odds as a sum: every fact of the call adds its weight to each need's log odds. The whole model is one table of weights,
/// so that any program that can add and take an exponential gives the same answer.
/// </summary>
public sealed class LogOddsModel : IPredictor
{
    /// <summary>Share of every answer that comes from the overall shares, so that no need is ever impossible.</summary>
    public const double BackgroundShare = 0.002;

    private readonly double[] _weights;

    /// <summary>Puts a model together.</summary>
    /// <param name="shape">Needs and facts.</param>
    /// <param name="weights">Weight of fact f on need k at f * needs + k.</param>
    /// <param name="background">Overall shares of the needs.</param>
    /// <param name="spreads">Learned spread of each group of facts on each need.</param>
    public LogOddsModel(LogOddsShape shape, double[] weights, double[] background, IReadOnlyList<double> spreads) =>
        (Shape, _weights, Background, Spreads) = (shape, weights, background, spreads);

    /// <summary>Needs and facts.</summary>
    public LogOddsShape Shape { get; }

    /// <summary>Facts of the jobs it learned from, for the next training, or null if read from a file.</summary>
    internal CodedCalls? Coded { get; init; }

    /// <inheritdoc/>
    public IReadOnlyList<string> Needs => Shape.Needs;

    /// <summary>Overall shares of the needs.</summary>
    public IReadOnlyList<double> Background { get; }

    /// <summary>Number of groups of facts.</summary>
    public static readonly int Groups = Enum.GetValues<FeatureGroup>().Length;

    /// <summary>Learned spread of group g on need k, in log odds, at g * needs + k.</summary>
    public IReadOnlyList<double> Spreads { get; }

    /// <summary>Root mean square of a group's spreads over the needs: how much such facts tell.</summary>
    public double SpreadOf(FeatureGroup group) =>
        Needs.Count == 0 ? 0 : Math.Sqrt(Enumerable.Range(0, Needs.Count).Average(k => Spreads[(int)group * Needs.Count + k] * Spreads[(int)group * Needs.Count + k]));

    /// <summary>All weights.</summary>
    public IReadOnlyList<double> Weights => _weights;

    /// <summary>Weights of one fact, a value per need.</summary>
    public ReadOnlySpan<double> WeightsOf(int fact) => _weights.AsSpan(fact * Needs.Count, Needs.Count);

    /// <inheritdoc/>
    public double[] Odds(Call call)
    {
        var odds = new double[Needs.Count];
        if (odds.Length == 0)
        {
            return odds;
        }

        int[] allowed = Shape.AllowedFor(call.ApplianceType);
        foreach (Feature feature in CallFeatures.From(call, Shape.Kinds))
        {
            int fact = Shape.Space.Find(feature.Key);
            if (feature.OnlyNeed is { } only)
            {
                AddSingle(odds, fact, feature, only);
            }
            else if (fact >= 0)
            {
                ReadOnlySpan<double> weights = WeightsOf(fact);
                foreach (int k in allowed)
                {
                    odds[k] += feature.Value * weights[k];
                }
            }
        }

        Normalize(odds, allowed, Background);
        return odds;
    }

    /// <summary>Turns sums of weights into odds, in place: the possible needs share 1, then every need gets its part of the overall shares.</summary>
    internal static void Normalize(double[] sums, int[] allowed, IReadOnlyList<double> background)
    {
        double[] possible = [.. allowed.Select(k => sums[k])];
        SoftMax.Apply(possible, -1);
        Array.Clear(sums);
        for (int a = 0; a < allowed.Length; a++)
        {
            sums[allowed[a]] = possible[a];
        }

        for (int k = 0; k < sums.Length; k++)
        {
            sums[k] = (1 - BackgroundShare) * sums[k] + BackgroundShare * background[k];
        }
    }

    private void AddSingle(double[] odds, int fact, Feature feature, string only)
    {
        if (fact >= 0 && Shape.Places.TryGetValue(only, out int need))
        {
            int shared = Shape.Space.Find(LogOddsShape.Shared(feature.Key));
            odds[need] += feature.Value * (WeightsOf(fact)[need] + WeightsOf(shared)[0]);
        }
    }
}
