namespace PartsSignal.Analysis.Trends;

/// <summary>All calls, sorted into the groups that series are counted in.</summary>
public sealed class CallTable
{
    private readonly Dictionary<string, List<TrendCall>> _byType = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Type, string Family), List<TrendCall>> _byFamily = [];
    private readonly Dictionary<SeriesKey, SeriesCounts> _counts = [];

    /// <summary>Sorts the calls.</summary>
    /// <param name="calls">All calls.</param>
    /// <param name="first">First month of the log.</param>
    /// <param name="last">Last month that is over.</param>
    public CallTable(IReadOnlyList<TrendCall> calls, int first, int last)
    {
        (First, Last) = (first, last);
        foreach (TrendCall call in calls)
        {
            Add(_byType, call.ApplianceType, call);
            Add(_byFamily, (call.ApplianceType, call.ModelFamily), call);
        }

        Keys = [.. calls.SelectMany(Series).Distinct()
            .OrderBy(k => k.ApplianceType, StringComparer.Ordinal).ThenBy(k => k.Component, StringComparer.Ordinal).ThenBy(k => k.ModelFamily, StringComparer.Ordinal)];
        foreach (SeriesKey key in Keys)
        {
            _counts[key] = SeriesCounts.From(key, Group(key), first, last);
        }
    }

    /// <summary>First month of the log.</summary>
    public int First { get; }

    /// <summary>Last month that is over.</summary>
    public int Last { get; }

    /// <summary>Every series that ever counted a case.</summary>
    public IReadOnlyList<SeriesKey> Keys { get; }

    /// <summary>Calls the series is held against.</summary>
    public IReadOnlyList<TrendCall> Group(SeriesKey key) =>
        key.IsParent || key.IsFamily ? _byType[key.ApplianceType] : _byFamily[(key.ApplianceType, key.ModelFamily)];

    /// <summary>Counts of a series.</summary>
    public SeriesCounts Counts(SeriesKey key) => _counts[key];

    /// <summary>Cases of a series in a month that were known at the end of another.</summary>
    public IReadOnlyList<TrendCall> Cases(SeriesKey key, int from, int to, int asOf) =>
        [.. Group(key).Where(c => c.Month >= from && c.Month <= to && key.Counts(c) && (key.IsFamily || c.KnownMonth <= asOf))];

    private static IEnumerable<SeriesKey> Series(TrendCall call)
    {
        bool family = call.ModelFamily != "unknown";
        if (family)
        {
            yield return new SeriesKey(call.ApplianceType, SeriesKey.All, call.ModelFamily);
        }

        if (call.HasFailure)
        {
            yield return new SeriesKey(call.ApplianceType, call.Component!, SeriesKey.All);
            if (family)
            {
                yield return new SeriesKey(call.ApplianceType, call.Component!, call.ModelFamily);
            }
        }
    }

    private static void Add<TKey>(Dictionary<TKey, List<TrendCall>> groups, TKey key, TrendCall call)
        where TKey : notnull
    {
        if (!groups.TryGetValue(key, out List<TrendCall>? list))
        {
            groups[key] = list = [];
        }

        list.Add(call);
    }
}
