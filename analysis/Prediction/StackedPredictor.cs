namespace PartsSignal.Analysis.Prediction;

/// <summary>Odds of several predictors in one: log p = sum of w log p_m, made to sum to 1 (logarithmic opinion pool, Genest and Zidek 1986).</summary>
internal sealed class StackedPredictor : IPredictor
{
    private readonly int[][] _places;

    /// <summary>Puts predictors together.</summary>
    /// <param name="members">The predictors, at least one.</param>
    /// <param name="weights">Weight of each, 0 or more.</param>
    public StackedPredictor(IReadOnlyList<IPredictor> members, IReadOnlyList<double> weights)
    {
        ArgumentOutOfRangeException.ThrowIfZero(members.Count);
        ArgumentOutOfRangeException.ThrowIfNotEqual(weights.Count, members.Count);
        (Members, Weights) = (members, weights);
        Needs = [.. members.SelectMany(m => m.Needs).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        Dictionary<string, int> places = NeedList.Places(Needs);
        _places = [.. members.Select(m => m.Needs.Select(n => places[n]).ToArray())];
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Needs { get; }

    /// <summary>The predictors.</summary>
    public IReadOnlyList<IPredictor> Members { get; }

    /// <summary>Weight of each predictor.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <inheritdoc/>
    public double[] Odds(Call call)
    {
        var logs = new double[Members.Count][];
        for (int m = 0; m < logs.Length; m++)
        {
            var odds = new double[Needs.Count];
            double[] own = Members[m].Odds(call);
            for (int k = 0; k < own.Length; k++)
            {
                odds[_places[m][k]] = own[k];
            }

            logs[m] = StackWeights.Logs(odds);
        }

        return StackWeights.Pool(logs, [.. Weights]);
    }
}
