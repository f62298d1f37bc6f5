namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// Thresholds of the sets at one level of promise, for each kind of complaint on each type of appliance. A threshold is
/// the promised quantile of the scores of calls the model did not learn from. A group's scores are pooled with those of
/// the wider group, so that a thin group leans on similar ones; with hardly any calls the sets are wide.
/// </summary>
/// <param name="Promise">Share of calls to be covered, for example 0.95.</param>
/// <param name="Overall">Threshold for complaints that have none of their own.</param>
/// <param name="ByKind">Threshold by complaint kind, for types that have none of their own.</param>
/// <param name="ByCell">Threshold by type and complaint kind; see <see cref="Cell"/>.</param>
/// <param name="Calls">Calls the thresholds stand on.</param>
public sealed record CarryLimits(
    double Promise, double Overall, IReadOnlyDictionary<string, double> ByKind, IReadOnlyDictionary<string, double> ByCell, int Calls)
{
    // The wider group counts as much as so many calls: all calls beside those of one kind or type, and these beside a cell.
    private const double PooledAll = 20, Pooled = 50;

    // Of that, what comes from the same complaint on other types; the rest comes from other complaints on the same type.
    private const double FromKind = 0.8;

    // Calls that are pretended to need a wide set: without calibration calls, they alone set the threshold.
    private const double WideCalls = 5;

    /// <summary>
    /// No set holds less of its call's own odds than this: 0.60 where 0.80 is promised, 0.90 where 0.95 is. A group of
    /// easy calls may so be covered more often than promised, but no set contradicts the odds beside it.
    /// </summary>
    public double Least => 1 - 2 * (1 - Promise);

    /// <summary>The threshold where nothing is known: 0.90 where 0.80 is promised, 0.975 where 0.95 is.</summary>
    private static double Wide(double promise) => 1 - (1 - promise) / 2;

    /// <summary>Key of a type and complaint kind.</summary>
    public static string Cell(string applianceType, string complaintKind) => $"{applianceType}\u001f{complaintKind}";

    /// <summary>Finds the thresholds on calls the model did not learn from.</summary>
    public static CarryLimits Fit(IReadOnlyList<Forecast> forecasts, double promise)
    {
        var sorted = forecasts.Select(f => (Score: CarrySet.Score(f), Type: f.ApplianceType, Kind: f.ComplaintKind)).OrderBy(s => s.Score).ToList();
        double wide = Wide(promise);
        int at = sorted.FindIndex(s => s.Score > wide) is >= 0 and var first ? first : sorted.Count;
        sorted.Insert(at, (wide, "", ""));
        double[] scores = [.. sorted.Select(s => s.Score)];
        double[] all = Shares([.. sorted.Select((_, i) => i == at ? WideCalls : 1)]);
        double[] Group(Func<(double Score, string Type, string Kind), bool> inside, params (double Weight, double[] Shares)[] parents) =>
            Shares([.. sorted.Select((s, i) => (i != at && inside(s) ? 1 : 0) + parents.Sum(p => p.Weight * p.Shares[i]))]);
        string[] kinds = [.. forecasts.Select(f => f.ComplaintKind).Distinct().Order(StringComparer.Ordinal)];
        var byKind = kinds.ToDictionary(k => k, k => Group(s => s.Kind == k, (PooledAll, all)), StringComparer.Ordinal);
        var byType = forecasts.Select(f => f.ApplianceType).Distinct().ToDictionary(t => t, t => Group(s => s.Type == t, (PooledAll, all)), StringComparer.Ordinal);
        var byCell = forecasts.Select(f => (Type: f.ApplianceType, Kind: f.ComplaintKind)).Distinct()
            .OrderBy(c => c.Type, StringComparer.Ordinal).ThenBy(c => c.Kind, StringComparer.Ordinal)
            .ToDictionary(
                c => Cell(c.Type, c.Kind),
                c => Group(s => s.Type == c.Type && s.Kind == c.Kind, (Pooled * FromKind, byKind[c.Kind]), (Pooled * (1 - FromKind), byType[c.Type])),
                StringComparer.Ordinal);
        var empty = new CarryLimits(promise, 0, new Dictionary<string, double>(), new Dictionary<string, double>(), forecasts.Count);
        double Threshold(double[] shares) => Math.Max(empty.Least, Quantile(scores, shares, promise));
        return empty with
        {
            Overall = Threshold(all),
            ByKind = byKind.ToDictionary(k => k.Key, k => Threshold(k.Value), StringComparer.Ordinal),
            ByCell = byCell.ToDictionary(c => c.Key, c => Threshold(c.Value), StringComparer.Ordinal),
        };
    }

    /// <summary>
    /// The threshold that holds for a call. One that tells no type or no readable complaint is rarely among the calls the
    /// thresholds were found on, so its set holds the promised share of its own odds at least.
    /// </summary>
    public double For(string applianceType, string complaintKind)
    {
        double found = ByCell.TryGetValue(Cell(applianceType, complaintKind), out double own) ? own : ByKind.GetValueOrDefault(complaintKind, Overall);
        return applianceType == Call.Unknown || complaintKind is Vocabulary.Need.OtherComplaint or Vocabulary.Need.NoComplaint ? Math.Max(found, Promise) : found;
    }

    /// <summary>Needs in the set of a forecast, likeliest first.</summary>
    internal IReadOnlyList<int> Members(Forecast forecast) => CarrySet.Members(forecast.Odds, For(forecast.ApplianceType, forecast.ComplaintKind));

    /// <summary>True when the set of a forecast held what the call needed.</summary>
    public bool Covers(Forecast forecast) => forecast.Truth >= 0 && Members(forecast).Contains(forecast.Truth);

    /// <summary>Just above the smallest score at or below which the promised share of the weight lies, so that its call is covered.</summary>
    private static double Quantile(double[] scores, double[] shares, double promise)
    {
        double sum = 0;
        for (int i = 0; i < scores.Length; i++)
        {
            sum += shares[i];
            if (sum >= promise - 1e-9)
            {
                return Math.Min(1, scores[i] + 1e-9);
            }
        }

        return 1;
    }

    private static double[] Shares(double[] weights)
    {
        double sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }
}
