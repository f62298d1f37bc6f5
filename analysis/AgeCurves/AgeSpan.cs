namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// The ages through which one appliance was watched. It is at risk at age t if, and only if, Entry &lt; t &lt;= Exit
/// (Tsai, Jewell and Wang 1987). Any unit of time will do, as long as it is one.
/// </summary>
/// <param name="Entry">Age at which watching began; 0 for watched from new.</param>
/// <param name="Exit">Age at which watching ended, by failure or otherwise.</param>
/// <param name="Cause">0: still working when watching ended; 1 and up: what failed at Exit.</param>
public readonly record struct AgeSpan(double Entry, double Exit, int Cause)
{
    /// <summary>Watching ended still working.</summary>
    public const int Working = 0;

    /// <summary>True when watching ended with a failure.</summary>
    public bool Failed => Cause != Working;
}
