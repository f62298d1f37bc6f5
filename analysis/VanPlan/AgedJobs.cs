namespace PartsSignal.Analysis.VanPlan;

/// <summary>The jobs of the history window, weighted by age, and how many days of such weight they were seen over.</summary>
/// <param name="Jobs">Jobs of the window.</param>
/// <param name="Weights">Weight of each, 1 for a job of today.</param>
/// <param name="PerDay">Jobs a day each stands for in the season to come.</param>
/// <param name="Total">Sum of the weights.</param>
/// <param name="MeanWeight">Mean weight of a weighted job; 1 when there are none.</param>
internal sealed record AgedJobs(IReadOnlyList<PastJob> Jobs, double[] Weights, double[] PerDay, double Total, double MeanWeight)
{
    /// <summary>Takes the window before a day.</summary>
    public static AgedJobs Before(IReadOnlyList<PastJob> jobs, DateOnly asOf, int types, DemandOptions options)
    {
        DateOnly from = asOf.AddDays(-options.HistoryDays);
        PastJob[] recent = [.. jobs.Where(j => j.Day >= from && j.Day < asOf)];
        int days = recent.Length == 0 ? 0 : asOf.DayNumber - recent.Min(j => j.Day).DayNumber;
        double halfLife = HalfLife(recent.Length, days, options);
        double[] weights = [.. recent.Select(j => Aged(asOf.DayNumber - j.Day.DayNumber, halfLife))];
        SeasonFactors season = SeasonFactors.Estimate(jobs, asOf, types, options.SeasonYears);

        // Each type's days count as its season made them count, so that a log that ends in summer does not plan for summer.
        double[] typeDays = new double[types + 1];
        for (int age = 1; age <= days; age++)
        {
            int month = asOf.AddDays(-age).Month;
            for (int t = 0; t <= types; t++)
            {
                typeDays[t] += Aged(age, halfLife) * season.Of(t < types ? t : -1, month);
            }
        }

        double[] ahead = [.. Enumerable.Range(0, types + 1).Select(t => season.Over(t < types ? t : -1, asOf, options.HorizonDays))];
        double[] perDay = [.. recent.Select((j, i) => (j.Type < 0 ? types : j.Type) is var t ? weights[i] * ahead[t] / typeDays[t] : 0)];
        double total = weights.Sum();
        return new AgedJobs(recent, weights, perDay, total, total > 0 ? weights.Sum(w => w * w) / total : 1);
    }

    /// <summary>Jobs that come evenly add up to jobs a day times half-life over ln 2.</summary>
    private static double HalfLife(int jobs, int days, DemandOptions options) => jobs == 0
        ? options.HalfLifeDays
        : Math.Clamp(
            options.PlentyJobs * Math.Log(2) * days / jobs,
            Math.Min(options.BusyHalfLifeDays, options.HalfLifeDays),
            options.HalfLifeDays);

    private static double Aged(int days, double halfLife) => Math.Pow(2, -days / halfLife);
}
