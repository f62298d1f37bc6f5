namespace PartsSignal.Analysis.Statistics.Shrinkage;

/// <summary>What a finding must be beside unlikely: large enough, and more than a handful.</summary>
/// <param name="Q">Largest q-value; default 0.10.</param>
/// <param name="Ratio">Smallest ratio of observed to expected; default 1.5.</param>
/// <param name="Count">Smallest count; default 3.</param>
public sealed record EffectGate(double Q = 0.10, double Ratio = 1.5, long Count = 3)
{
    /// <summary>True when all three hold.</summary>
    public bool Passes(double? q, double? ratio, long count) => q <= Q && ratio >= Ratio && count >= Count;
}
