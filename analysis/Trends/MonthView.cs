namespace PartsSignal.Analysis.Trends;

/// <summary>What could be known at the end of a month: nothing later is ever looked at.</summary>
/// <param name="AsOf">The month.</param>
/// <param name="Delays">Reporting delays as they could be told then.</param>
/// <param name="Seasons">Seasons of components over all families of a type, and growth of families, as they could be told then.</param>
/// <param name="Flagged">Months of rises that alarmed before, from their beginning; they stay out of baselines.</param>
internal sealed record MonthView(
    int AsOf, DelayModel Delays, IReadOnlyDictionary<SeriesKey, SeasonFactor> Seasons, IReadOnlySet<(SeriesKey Key, int Month)> Flagged)
{
    /// <summary>Looks at the calls from the end of a month.</summary>
    public static MonthView At(CallTable table, int asOf, IReadOnlySet<(SeriesKey Key, int Month)> flagged, TrendOptions options)
    {
        var bare = new MonthView(asOf, DelayModel.At(table, asOf), new Dictionary<SeriesKey, SeasonFactor>(), flagged);
        var seasons = new Dictionary<SeriesKey, SeasonFactor>();
        foreach (SeriesKey key in table.Keys.Where(k => k.IsParent || k.IsFamily))
        {
            IReadOnlyList<(int Month, double Count, double Exposure)> months = bare.Baseline(key, table.Counts(key), asOf, options);
            SeasonFactor season = key.IsFamily ? SeasonFactor.GrowthOf(months) : SeasonFactor.Fit(months, options.FewestForSeason);
            if (season != SeasonFactor.None)
            {
                seasons[key] = season;
            }
        }

        return bare with { Seasons = seasons };
    }

    /// <summary>Calls of a month, times the share known by now, times the season.</summary>
    public double Exposure(SeriesKey key, SeriesCounts counts, int month) =>
        counts.Calls(month) * Delays.Completeness(key, AsOf - month) * Season(key).At(month);

    /// <summary>The season a series follows: that of its component over all families; for a family its growth.</summary>
    public SeasonFactor Season(SeriesKey key) => Seasons.GetValueOrDefault(key.IsFamily ? key : key.Parent, SeasonFactor.None);

    /// <summary>Months of the baseline of a month, without flagged ones and without months that had no calls.</summary>
    public IReadOnlyList<(int Month, double Count, double Exposure)> Baseline(SeriesKey key, SeriesCounts counts, int month, TrendOptions options)
    {
        var months = new List<(int, double, double)>();
        int last = month - 1 - options.SkippedMonths;
        for (int m = Math.Max(counts.First, last - options.BaselineMonths + 1); m <= last; m++)
        {
            double exposure = Exposure(key, counts, m);
            bool flagged = m > month - options.FlaggedMonths && Flagged.Contains((key, m));
            if (exposure > 0 && !flagged)
            {
                months.Add((m, counts.Known(m, AsOf), exposure));
            }
        }

        return months;
    }
}
