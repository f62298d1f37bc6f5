namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>How often intervals held the truth.</summary>
internal sealed class CoverageTally
{
    private readonly SortedDictionary<string, (int Held, int All)> _counts = new(StringComparer.Ordinal);

    public void Add(string kind, double truth, double? lower, double? upper)
    {
        (int held, int all) = _counts.GetValueOrDefault(kind);
        _counts[kind] = (held + (truth >= lower && truth <= upper ? 1 : 0), all + 1);
    }

    public double Share(string kind) => (double)_counts[kind].Held / _counts[kind].All;

    public string Report => string.Join("; ", _counts.Select(c => $"{c.Key} {(double)c.Value.Held / c.Value.All:P1} of {c.Value.All}"));

    /// <summary>Fails unless every kind held its truth in the given share of cases.</summary>
    /// <param name="lowest">Least share.</param>
    /// <param name="highest">Largest share.</param>
    /// <param name="but">Kinds whose intervals are exact, so that they may hold it more often.</param>
    /// <param name="highestOfThose">Largest share of these.</param>
    public void Between(double lowest, double highest, IReadOnlyCollection<string>? but = null, double highestOfThose = 1) =>
        Assert.True(_counts.Keys.All(k => Share(k) >= lowest && Share(k) <= (but?.Contains(k) == true ? highestOfThose : highest)), Report);
}
