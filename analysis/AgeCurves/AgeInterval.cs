namespace PartsSignal.Analysis.AgeCurves;

/// <summary>A failure whose age is known only to lie between two ages, or a life that has not ended yet.</summary>
/// <param name="After">Still working at this age; 0: failed at some age up to Before.</param>
/// <param name="Before">Failed by this age; null: not failed when last seen.</param>
/// <param name="Entry">Age at which watching began; 0: from new.</param>
public readonly record struct AgeInterval(double After, double? Before, double Entry = 0)
{
    /// <summary>Why this interval cannot be used; null: it can.</summary>
    public string? Fault() =>
        !(Entry >= 0) || !(After >= Entry) ? "watched from before it was made, or after it failed"
        : Before is { } before && !(before > After) ? "the interval ends no later than it begins"
        : null;
}

/// <summary>
/// A failure that is in the log only because it happened between two ages: those the appliance had when the log
/// began and when it was closed.
/// </summary>
/// <param name="Age">Age at failure.</param>
/// <param name="Earliest">Age when the log began; 0 if made later.</param>
/// <param name="Latest">Age when the log was closed.</param>
public readonly record struct TruncatedAge(double Age, double Earliest, double Latest)
{
    /// <summary>Why this failure cannot be used; null: it can.</summary>
    public string? Fault() =>
        !(Earliest >= 0) || !(Age > 0) ? "failed, or watched, before it was made"
        : !(Earliest <= Age && Age <= Latest) ? "failed outside the time of the log"
        : null;
}
