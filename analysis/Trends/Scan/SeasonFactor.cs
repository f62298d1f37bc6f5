using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Trends.Models;

namespace PartsSignal.Analysis.Trends.Scan;

/// <summary>A yearly wave in the log of a rate: exp(a sin + b cos) of the month.</summary>
/// <param name="Sine">a.</param>
/// <param name="Cosine">b.</param>
public sealed record SeasonFactor(double Sine, double Cosine)
{
    /// <summary>No season.</summary>
    public static readonly SeasonFactor None = new(0, 0);

    private const double Convincing = 0.01;

    /// <summary>The factor of a month.</summary>
    public double At(int month) => Math.Exp(Sine * Math.Sin(2 * Math.PI * month / 12) + Cosine * Math.Cos(2 * Math.PI * month / 12));

    /// <summary>
    /// The season of a component over all families of its type; none unless two years and enough events show one
    /// convincingly (likelihood ratio at 0.01), so that a season is not read into chance. Its families borrow it.
    /// </summary>
    public static SeasonFactor Of(IReadOnlyList<(int Month, double Count, double Exposure)> months, long fewest)
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
