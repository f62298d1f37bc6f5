namespace PartsSignal.Analysis.VanPlan;

/// <summary>Forecasts of lumpy demand, pieces per period after the last one; for comparison beside the predictive distribution.</summary>
/// <param name="Size">Smoothed pieces of a period with demand (Croston).</param>
/// <param name="Interval">Smoothed periods between demands (Croston).</param>
/// <param name="Croston">Size / interval (Croston 1972).</param>
/// <param name="Sba">Croston times 1 - alpha / 2 (Syntetos and Boylan 2005).</param>
/// <param name="Sbj">Croston times 1 - alpha / (2 - alpha) (Shale, Boylan and Johnston 2006).</param>
/// <param name="TsbProbability">Smoothed chance of demand in a period.</param>
/// <param name="Tsb">Chance times size; falls to 0 for a dying part (Teunter, Syntetos and Babai 2011).</param>
internal sealed record IntermittentForecast(
    double Size, double Interval, double Croston, double Sba, double Sbj, double TsbProbability, double Tsb)
{
    /// <summary>
    /// Runs all methods over one series. Croston starts with the first demand and its place in the series and changes
    /// only when there is demand; TSB starts with the share of periods that had any and changes every period.
    /// </summary>
    /// <param name="demand">Pieces per period, oldest first.</param>
    /// <param name="alpha">Smoothing of size and interval, above 0 and at most 1.</param>
    /// <param name="beta">Smoothing of the chance of demand, above 0 and at most 1.</param>
    /// <returns>Null when there never was any demand.</returns>
    public static IntermittentForecast? Fit(IReadOnlyList<double> demand, double alpha, double beta)
    {
        int first = demand.TakeWhile(d => d <= 0).Count();
        if (first == demand.Count)
        {
            return null;
        }

        double size = demand[first];
        double interval = first + 1;
        double chance = (double)demand.Count(d => d > 0) / demand.Count;
        int last = first;
        for (int t = 0; t < demand.Count; t++)
        {
            chance += beta * ((demand[t] > 0 ? 1 : 0) - chance);
            if (t > first && demand[t] > 0)
            {
                size += alpha * (demand[t] - size);
                interval += alpha * (t - last - interval);
                last = t;
            }
        }

        double rate = size / interval;
        return new IntermittentForecast(size, interval, rate, (1 - (alpha / 2)) * rate, (1 - (alpha / (2 - alpha))) * rate, chance, chance * size);
    }
}
