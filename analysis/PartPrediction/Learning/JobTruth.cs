namespace PartsSignal.Analysis.PartPrediction.Learning;

/// <summary>
/// For a fictional shop only: what its maker knows of a job. Never learned from; it tells how good any honest odds
/// could have been.
/// </summary>
/// <param name="JobId">The job.</param>
/// <param name="TrueNeed">What was really at fault; null: not told.</param>
/// <param name="Odds">Best possible odds of the true need.</param>
/// <param name="RecordedOdds">Best possible odds of the need that gets written down, wrong diagnoses included.</param>
public sealed record JobTruth(string JobId, string? TrueNeed, IReadOnlyDictionary<string, double> Odds, IReadOnlyDictionary<string, double> RecordedOdds)
{
    /// <summary>Reads odds written as <c>need:probability;need:probability</c>.</summary>
    /// <exception cref="FormatException">A part is not written that way.</exception>
    public static IReadOnlyDictionary<string, double> Parse(string text) =>
        text.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split(':')).ToDictionary(
            p => p[0],
            p => p.Length == 2 ? double.Parse(p[1], System.Globalization.CultureInfo.InvariantCulture) : throw new FormatException($"No odds: '{text}'."),
            StringComparer.Ordinal);
}
