using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>The tally sheet a shop keeps in its head: shares per complaint.</summary>
internal sealed class ComplaintOnlyContender : IContender
{
    /// <summary>Its name.</summary>
    public const string ContenderName = "complaint_only";

    /// <inheritdoc/>
    public string Name => ContenderName;

    /// <inheritdoc/>
    public string What => "Shares of what a complaint turned out to need.";

    /// <inheritdoc/>
    public int Complexity => 0;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null) =>
        BackOffTrainer.Train(calls, BackOffLevel.ComplaintOnly);
}

/// <summary>A tally sheet per type of appliance: a harder plain contender.</summary>
internal sealed class ComplaintOnTypeContender : IContender
{
    /// <summary>Its name.</summary>
    public const string ContenderName = "complaint_on_type";

    /// <inheritdoc/>
    public string Name => ContenderName;

    /// <inheritdoc/>
    public string What => "Shares of what a complaint on that type of appliance turned out to need.";

    /// <inheritdoc/>
    public int Complexity => 1;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null) =>
        BackOffTrainer.Train(calls, BackOffLevel.ComplaintOnType);
}

/// <summary>Shares from this model up to all jobs, each level leaning on the one above.</summary>
internal sealed class BackOffContender : IContender
{
    /// <summary>Its name.</summary>
    public const string ContenderName = "back_off";

    /// <summary>Its place by simplicity: everything simpler is a tally sheet.</summary>
    public const int Simplicity = 2;

    /// <inheritdoc/>
    public string Name => ContenderName;

    /// <inheritdoc/>
    public string What => "Shares by model, family, age, complaint and type, each level leaning on the one above.";

    /// <inheritdoc/>
    public int Complexity => Simplicity;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null) => BackOffTrainer.Train(calls);
}

/// <summary>Sums of log odds with learned spreads.</summary>
public sealed class LogOddsContender : IContender
{
    /// <summary>Its name.</summary>
    public const string ContenderName = "log_odds";

    /// <inheritdoc/>
    public string Name => ContenderName;

    /// <inheritdoc/>
    public string What => "Sums of log odds over facts of the call (family, age, complaint, words, season, history), each group of facts with a learned spread.";

    /// <inheritdoc/>
    public int Complexity => 3;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null) =>
        LogOddsTrainer.Train(calls, earlier as LogOddsModel);
}
