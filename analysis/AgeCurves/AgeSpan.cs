using PartsSignal.Analysis.Statistics;

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

/// <summary>Spans with ties made exact, apart from those that cannot be used.</summary>
/// <param name="Good">Usable spans, in the order given.</param>
/// <param name="Bad">The others.</param>
internal sealed record CheckedSpans(IReadOnlyList<AgeSpan> Good, IReadOnlyList<BadRow> Bad)
{
    /// <summary>Makes tied ages equal, then sets aside spans that are empty or hold no ages.</summary>
    public static CheckedSpans From(IReadOnlyList<AgeSpan> spans)
    {
        TiedAges ties = TiedAges.Among(spans.SelectMany(s => new[] { s.Entry, s.Exit }));
        AgeSpan[] exact = [.. spans.Select(s => s with { Entry = ties.Snap(s.Entry), Exit = ties.Snap(s.Exit) })];
        (IReadOnlyList<AgeSpan> good, IReadOnlyList<BadRow> bad) = BadRow.Split(exact, Fault);
        return new CheckedSpans(good, bad);
    }

    private static string? Fault(AgeSpan span) =>
        !double.IsFinite(span.Entry) || !double.IsFinite(span.Exit) ? "an age is missing"
        : span.Entry < 0 ? "watched from before it was made"
        : span.Cause < 0 ? "the cause is below 0"
        : span.Entry >= span.Exit ? "watching ends no later than it begins"
        : null;
}
