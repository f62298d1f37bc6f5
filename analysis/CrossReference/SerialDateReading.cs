namespace PartsSignal.Analysis.CrossReference;

/// <summary>What a serial says of the build date: possible intervals oldest first, or why it says nothing.</summary>
/// <param name="Candidates">Possible build intervals; several when the code repeats over the years.</param>
/// <param name="Fault">Why the serial breaks its brand's rule; null: it does not, or its brand has no rule.</param>
public sealed record SerialDateReading(IReadOnlyList<BuildInterval> Candidates, string? Fault)
{
    /// <summary>Nothing known and nothing wrong.</summary>
    public static readonly SerialDateReading Silent = new([], null);

    /// <summary>The candidates as one text, as <see cref="BuildInterval.Write"/> writes them; null: there are none.</summary>
    public string? Written { get; } = BuildInterval.Write(Candidates);

    internal static SerialDateReading Broken(string why) => new([], why);
}
