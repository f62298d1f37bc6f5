using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

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
