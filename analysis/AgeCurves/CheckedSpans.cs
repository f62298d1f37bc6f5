namespace PartsSignal.Analysis.AgeCurves;

/// <summary>A span that cannot be used, and why.</summary>
/// <param name="Row">Its place in the input, from 0.</param>
/// <param name="Reason">What is wrong with it.</param>
public sealed record BadSpan(int Row, string Reason);

/// <summary>Spans with ties made exact, apart from those that cannot be used.</summary>
/// <param name="Good">Usable spans, in the order given.</param>
/// <param name="Bad">The others.</param>
internal sealed record CheckedSpans(IReadOnlyList<AgeSpan> Good, IReadOnlyList<BadSpan> Bad)
{
    /// <summary>Makes tied ages equal, then sets aside spans that are empty or hold no ages.</summary>
    public static CheckedSpans From(IReadOnlyList<AgeSpan> spans)
    {
        TiedAges ties = TiedAges.Among(spans.SelectMany(s => new[] { s.Entry, s.Exit }));
        var good = new List<AgeSpan>(spans.Count);
        var bad = new List<BadSpan>();
        for (int i = 0; i < spans.Count; i++)
        {
            AgeSpan span = spans[i] with { Entry = ties.Snap(spans[i].Entry), Exit = ties.Snap(spans[i].Exit) };
            if (Fault(span) is { } reason)
            {
                bad.Add(new BadSpan(i, reason));
            }
            else
            {
                good.Add(span);
            }
        }

        return new CheckedSpans(good, bad);
    }

    private static string? Fault(AgeSpan span) =>
        !double.IsFinite(span.Entry) || !double.IsFinite(span.Exit) ? "an age is missing"
        : span.Entry < 0 ? "watched from before it was made"
        : span.Cause < 0 ? "the cause is below 0"
        : span.Entry >= span.Exit ? "watching ends no later than it begins"
        : null;
}
