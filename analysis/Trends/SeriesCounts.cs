namespace PartsSignal.Analysis.Trends;

/// <summary>Calls of a group by month, and those of them a series counts by month and by months until known.</summary>
public sealed class SeriesCounts
{
    private readonly int _first;
    private readonly long[] _calls;
    private readonly long[][] _known;

    private SeriesCounts(int first, long[] calls, long[][] known) => (_first, _calls, _known) = (first, calls, known);

    /// <summary>Counts the calls of a group.</summary>
    /// <param name="key">The series.</param>
    /// <param name="group">Calls that are its exposure.</param>
    /// <param name="first">First month.</param>
    /// <param name="last">Last month.</param>
    public static SeriesCounts From(SeriesKey key, IEnumerable<TrendCall> group, int first, int last)
    {
        int months = last - first + 1;
        long[] calls = new long[months];
        long[][] known = [.. Enumerable.Range(0, months).Select(m => new long[months - m])];
        foreach (TrendCall call in group.Where(c => c.Month >= first && c.Month <= last))
        {
            int month = call.Month - first;
            calls[month]++;
            int? delay = !key.Counts(call) ? null : key.IsFamily ? 0 : call.KnownMonth - call.Month;
            if (delay < known[month].Length)
            {
                known[month][delay.Value]++;
            }
        }

        foreach (long[] row in known)
        {
            for (int d = 1; d < row.Length; d++)
            {
                row[d] += row[d - 1];
            }
        }

        return new SeriesCounts(first, calls, known);
    }

    /// <summary>First month of the counts.</summary>
    public int First => _first;

    /// <summary>Calls of the group in a month.</summary>
    public long Calls(int month) => _calls[month - _first];

    /// <summary>Cases of a month that were known at the end of another.</summary>
    public long Known(int month, int asOf) => _known[month - _first][asOf - month];
}

/// <summary>
/// A monthly series. A component in one family is held against that family's calls; a component in all families, and
/// a family with all its faults, against the calls of the appliance type.
/// </summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">A component, or <see cref="All"/>.</param>
/// <param name="ModelFamily">A family, or <see cref="All"/>.</param>
public sealed record SeriesKey(string ApplianceType, string Component, string ModelFamily)
{
    /// <summary>Stands for every component, or every family.</summary>
    public const string All = "all";

    /// <summary>Counts all of a family's calls.</summary>
    public bool IsFamily => Component == All;

    /// <summary>Counts a component over all families of the type.</summary>
    public bool IsParent => ModelFamily == All;

    /// <summary>The same component over all families of the type.</summary>
    public SeriesKey Parent => this with { ModelFamily = All };

    /// <summary>True for a call that the series counts.</summary>
    public bool Counts(TrendCall call) => IsFamily ? call.ModelFamily == ModelFamily : call.HasFailure && call.Component == Component;
}
