namespace PartsSignal.Analysis.Trends;

/// <summary>
/// How many of a month's calls are known after how many months. A component is known only once the job is closed, so
/// the newest months are always short. Reverse-time hazard g(d) = n(d)/n(&lt;= d), F(d) = product over x &gt; d of
/// (1 - g(x)) (Lawless 1994; the same as the chain ladder).
/// </summary>
/// <param name="ReverseHazards">g(1), g(2), ...: share of those known after d months that became known in the d-th.</param>
/// <param name="Completeness">F(0), F(1), ...: share known after so many months; the last is 1.</param>
internal sealed record ReportingDelay(IReadOnlyList<double> ReverseHazards, IReadOnlyList<double> Completeness)
{
    /// <summary>Estimates the delay from counts by month of call and months until known.</summary>
    /// <param name="triangle">Oldest month first; each row holds the delays that could have been seen by now.</param>
    public static ReportingDelay Estimate(IReadOnlyList<IReadOnlyList<long>> triangle)
    {
        int longest = triangle.Count == 0 ? 0 : triangle.Max(r => r.Count) - 1;
        double[] hazards = new double[Math.Max(0, longest)];
        double[] completeness = new double[longest + 1];
        completeness[longest] = 1;
        for (int d = longest; d >= 1; d--)
        {
            IReadOnlyList<long>[] seen = [.. triangle.Where(r => r.Count > d)];
            long upTo = seen.Sum(r => r.Take(d + 1).Sum());
            hazards[d - 1] = upTo > 0 ? (double)seen.Sum(r => r[d]) / upTo : 0;
            completeness[d - 1] = completeness[d] * (1 - hazards[d - 1]);
        }

        return new ReportingDelay(hazards, completeness);
    }

    /// <summary>Share of a month's calls known so many months after it.</summary>
    public double After(int months) => Completeness[Math.Min(months, Completeness.Count - 1)];

    /// <summary>Expected final count of a month; null when nothing can be known yet.</summary>
    /// <param name="seen">Known by now.</param>
    /// <param name="months">Months since the month of the call.</param>
    public double? Nowcast(long seen, int months) => After(months) > 0 ? seen / After(months) : null;
}
