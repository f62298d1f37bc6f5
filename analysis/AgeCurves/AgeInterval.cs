namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// A failure that is in the log only because it happened between two ages: those the appliance had when the log
/// began and when it was closed.
/// </summary>
/// <param name="Age">Age at failure.</param>
/// <param name="Earliest">Age when the log began; 0 if made later.</param>
/// <param name="Latest">Age when the log was closed.</param>
public readonly record struct TruncatedAge(double Age, double Earliest, double Latest)
{
    /// <summary>Why this failure cannot be used, or null if it can.</summary>
    public string? Fault() =>
        !double.IsFinite(Age) || !double.IsFinite(Earliest) || !double.IsFinite(Latest) ? "an age is missing" :
        !(Earliest >= 0) || !(Age > 0) ? "failed, or watched, before it was made"
        : !(Earliest <= Age && Age <= Latest) ? "failed outside the time of the log"
        : null;
}
