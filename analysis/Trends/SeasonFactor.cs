using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>What moves a rate although nothing is wrong: exp(a sin + b cos + growth * month) of the month.</summary>
/// <param name="Sine">a.</param>
/// <param name="Cosine">b.</param>
/// <param name="Growth">Growth per month in the log; 0 or more.</param>
/// <param name="From">Month from which growth counts.</param>
internal sealed record SeasonFactor(double Sine, double Cosine, double Growth = 0, int From = 0)
{
    /// <summary>No season.</summary>
    public static readonly SeasonFactor None = new(0, 0);

    private const double Convincing = 0.01;
    private const double FastestGrowth = 0.15;

    /// <summary>The factor of a month.</summary>
    public double At(int month) => Math.Exp(Sine * Math.Sin(2 * Math.PI * month / 12) + Cosine * Math.Cos(2 * Math.PI * month / 12) + Growth * (month - From));

    /// <summary>
    /// How a family's calls grow as more of it is sold and grows old: a straight line in the log over the baseline. More
    /// calls on that line are no news; without a count of units out there nobody can say that they are a fault.
    /// </summary>
    public static SeasonFactor GrowthOf(IReadOnlyList<(int Month, double Count, double Exposure)> months)
    {
        if (months.Count < 12)
        {
            return None;
        }

        int from = months[0].Month;
        CountModel line = PoissonRegression.Fit([.. months.Select(m => new CountRow(m.Count, m.Exposure, MonthTerms.Trend(m.Month - from)))]);
        return line.Missing is null && line.Coefficients[1] > 0 ? new SeasonFactor(0, 0, Math.Min(FastestGrowth, line.Coefficients[1]), from) : None;
    }

    /// <summary>
    /// The season of a component over all families of its type; none unless two years and enough events show one
    /// convincingly (likelihood ratio at 0.01), so that a season is not read into chance. Its families borrow it.
    /// </summary>
    public static SeasonFactor Fit(IReadOnlyList<(int Month, double Count, double Exposure)> months, long fewest)
    {
        if (months.Count < 24 || months.Sum(m => m.Count) < fewest)
        {
            return None;
        }

        CountModel wave = PoissonRegression.Fit([.. months.Select(m => new CountRow(m.Count, m.Exposure, MonthTerms.Season(m.Month)))]);
        CountModel flat = PoissonRegression.Fit([.. months.Select(m => new CountRow(m.Count, m.Exposure, [1]))]);
        double scatter = Math.Max(1, wave.Dispersion ?? 1);
        return wave.Missing is null && new ChiSquareDistribution(2).UpperTail((flat.Deviance - wave.Deviance) / scatter) < Convincing
            ? new SeasonFactor(wave.Coefficients[1], wave.Coefficients[2])
            : None;
    }
}
