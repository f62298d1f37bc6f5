namespace PartsSignal.Analysis.Vocabulary;

/// <summary>A half-open band of ages in years: from &lt;= age &lt; to.</summary>
/// <param name="From">First age inside, years, 0 or more.</param>
/// <param name="To">First age beyond, or null if it has no end.</param>
public sealed record AgeBand(int From, int? To)
{
    /// <summary>The bands of every table: 0-2, 2-4, 4-6, 6-8, 8-10, 10-13, 13+.</summary>
    public static readonly IReadOnlyList<AgeBand> Standard =
        [new(0, 2), new(2, 4), new(4, 6), new(6, 8), new(8, 10), new(10, 13), new(13, null)];

    /// <summary>Text for a unit whose age is not known.</summary>
    public const string UnknownText = "unknown";

    /// <summary>The standard band that holds an age; null for an unknown or negative one.</summary>
    public static AgeBand? FromYears(double? years) =>
        years is { } y && y >= 0 ? Standard.First(b => b.To is null || y < b.To) : null;

    /// <summary>For example <c>2-4</c> or <c>13+</c>.</summary>
    public override string ToString() => To is { } to ? $"{From}-{to}" : $"{From}+";
}
