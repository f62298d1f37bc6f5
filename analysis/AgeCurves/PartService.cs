namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Parts of one component in one family: how long they served, and how many of them failed.</summary>
/// <param name="Ends">Times in service, above 0, any unit, with the parts whose service ended then and those of them that failed.</param>
internal sealed record PartService(IReadOnlyList<ServiceEnd> Ends)
{
    /// <summary>Parts that failed.</summary>
    public long Failures { get; } = Ends.Sum(e => e.Failures);
}

/// <summary>Parts whose service ended after one time, and how many of them by a failure.</summary>
/// <param name="Time">Time in service, above 0.</param>
/// <param name="Parts">Parts, 1 or more.</param>
/// <param name="Failures">0 to <paramref name="Parts"/>.</param>
internal readonly record struct ServiceEnd(double Time, long Parts, long Failures);
