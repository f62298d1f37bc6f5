namespace PartsSignal.Analysis.Prediction.MachineLearning;

/// <summary>
/// One trained pipeline of the learning library per type of appliance, behind the predictor's interface. A type with too
/// few jobs is answered by the back-off.
/// </summary>
internal sealed class LearnedPredictor : IPredictor
{
    /// <summary>Share of every answer that comes from the back-off, so that no need is ever impossible.</summary>
    public const double BackOffShare = 0.01;

    private readonly Dictionary<string, int> _places;

    internal LearnedPredictor(IReadOnlyDictionary<string, TypeLearner> types, BackOffModel backOff, bool readsBackOff)
    {
        (Types, BackOff, ReadsBackOff) = (types, backOff, readsBackOff);
        _places = NeedList.Places(backOff.Needs);
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Needs => BackOff.Needs;

    /// <summary>The back-off beside it.</summary>
    public BackOffModel BackOff { get; }

    /// <summary>The learners by type of appliance.</summary>
    internal IReadOnlyDictionary<string, TypeLearner> Types { get; }

    /// <summary>True: the back-off's odds are among the facts it reads.</summary>
    internal bool ReadsBackOff { get; }

    /// <inheritdoc/>
    public double[] Odds(Call call)
    {
        double[] odds = BackOff.Odds(call);
        if (!Types.TryGetValue(call.ApplianceType, out TypeLearner? learner))
        {
            return odds;
        }

        double[] own = learner.Odds(LearnerRow.From(call, "", ReadsBackOff ? odds : null));
        for (int k = 0; k < odds.Length; k++)
        {
            odds[k] *= BackOffShare;
        }

        for (int k = 0; k < own.Length; k++)
        {
            odds[_places[learner.Needs[k]]] += (1 - BackOffShare) * own[k];
        }

        return odds;
    }
}
