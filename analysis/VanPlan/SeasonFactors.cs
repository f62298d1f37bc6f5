namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// How calls of each appliance type rise and fall over the year: jobs per calendar month against an even year,
/// shrunk to 1 like any other mix.
/// </summary>
internal sealed class SeasonFactors
{
    private readonly double[] _factors;

    private SeasonFactors(double[] factors) => _factors = factors;

    /// <summary>Factor of a type in a calendar month (1 to 12); 1 for an unknown type.</summary>
    public double Of(int type, int month) => type < 0 || _factors.Length == 0 ? 1 : _factors[(type * 12) + month - 1];

    /// <summary>Mean factor over the days of a period.</summary>
    public double Over(int type, DateOnly from, int days)
    {
        double sum = 0;
        for (int d = 0; d < days; d += 7)
        {
            sum += Of(type, from.AddDays(d).Month);
        }

        return sum / ((days + 6) / 7);
    }

    /// <summary>Estimates from whole years before <paramref name="asOf"/>; all 1 where there are too few.</summary>
    public static SeasonFactors Estimate(IReadOnlyList<PastJob> jobs, DateOnly asOf, int types, int yearsNeeded)
    {
        DateOnly first = jobs.Count == 0 ? asOf : jobs.Min(j => j.Day);
        int years = 0;
        while (asOf.AddYears(-years - 1) >= first)
        {
            years++;
        }

        if (years < yearsNeeded)
        {
            return new SeasonFactors([]);
        }

        DateOnly start = asOf.AddYears(-years);
        double[] counts = new double[types * 12];
        double[] all = new double[types];
        foreach (PastJob job in jobs.Where(j => j.Type >= 0 && j.Day >= start && j.Day < asOf))
        {
            counts[(job.Type * 12) + job.Day.Month - 1]++;
            all[job.Type]++;
        }

        double[] expected = new double[types * 12];
        for (int i = 0; i < expected.Length; i++)
        {
            expected[i] = all[i / 12] * DateTime.DaysInMonth(2023, (i % 12) + 1) / 365.0;
        }

        return new SeasonFactors(SharedMix.Factors(counts, expected, 1));
    }
}
