namespace PartsSignal.Analysis.Trends;

/// <summary>How complete a month is, by component, as it could be told at the end of some month.</summary>
internal sealed class DelayModel
{
    private const int Months = 24;
    private const int LongestDelay = 12;
    private const long FewestOwn = 100;

    private readonly Dictionary<string, ReportingDelay> _own = new(StringComparer.Ordinal);

    private DelayModel(ReportingDelay pooled) => Pooled = pooled;

    /// <summary>The delay over all components.</summary>
    public ReportingDelay Pooled { get; }

    /// <summary>Components with enough cases for a delay of their own.</summary>
    public IReadOnlyDictionary<string, ReportingDelay> Own => _own;

    /// <summary>Estimates the delays from the two years up to a month.</summary>
    public static DelayModel At(CallTable table, int asOf)
    {
        int first = Math.Max(table.First, asOf - Months + 1);
        var byComponent = table.Keys.Where(k => k.IsParent && !k.IsFamily).GroupBy(k => k.Component)
            .ToDictionary(g => g.Key, g => Triangle(table, [.. g], first, asOf), StringComparer.Ordinal);
        long[][] all = Empty(first, asOf);
        foreach (long[][] triangle in byComponent.Values)
        {
            for (int m = 0; m < all.Length; m++)
            {
                for (int d = 0; d < all[m].Length; d++)
                {
                    all[m][d] += triangle[m][d];
                }
            }
        }

        var delays = new DelayModel(ReportingDelay.Estimate(all));
        foreach ((string component, long[][] triangle) in byComponent.Where(c => c.Value.Sum(r => r.Sum()) >= FewestOwn))
        {
            delays._own[component] = ReportingDelay.Estimate(triangle);
        }

        return delays;
    }

    /// <summary>Share of a series' cases known so many months after the month of the call.</summary>
    public double Completeness(SeriesKey key, int months) =>
        key.IsFamily ? 1 : (_own.GetValueOrDefault(key.Component) ?? Pooled).After(months);

    private static long[][] Triangle(CallTable table, IReadOnlyList<SeriesKey> keys, int first, int asOf)
    {
        long[][] triangle = Empty(first, asOf);
        foreach (SeriesKey key in keys)
        {
            SeriesCounts counts = table.Counts(key);
            for (int month = first; month <= asOf; month++)
            {
                long before = 0;
                for (int d = 0; d < triangle[month - first].Length; d++)
                {
                    long known = counts.Known(month, month + d);
                    triangle[month - first][d] += known - before;
                    before = known;
                }
            }
        }

        return triangle;
    }

    private static long[][] Empty(int first, int asOf) =>
        [.. Enumerable.Range(first, asOf - first + 1).Select(m => new long[Math.Min(LongestDelay, asOf - m) + 1])];
}
