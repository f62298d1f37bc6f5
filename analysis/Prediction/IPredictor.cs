namespace PartsSignal.Analysis.Prediction;

/// <summary>Turns a call into odds over what it may need. A pure function: the same call gives the same odds to the last digit.</summary>
public interface IPredictor
{
    /// <summary>The needs it knows, in ordinal order.</summary>
    IReadOnlyList<string> Needs { get; }

    /// <summary>One probability per need, each 0 to 1, summing to 1.</summary>
    double[] Odds(Call call);
}
